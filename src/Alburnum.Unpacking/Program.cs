using Alburnum.Unpacking;

// One picture, from standard input to standard output; what goes over the two is described at Exchange.
// With "limits" it tries what it may not do, and prints what came of it.
if (args is ["limits"])
{
    Confinement.Enter(mostWrittenBytes: 0);
    foreach (var line in Confinement.Tried())
        Console.WriteLine(line);
    return 0;
}
if (args is not [var kind] || !Enum.TryParse<PictureKind>(kind, out var known))
{
    Console.Error.WriteLine("alburnum-unpack: it is started by Alburnum, with the kind of one picture.");
    return 2;
}
Exchange.Run(known, Console.OpenStandardInput(), Console.OpenStandardOutput());
return 0;
