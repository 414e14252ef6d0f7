namespace Alburnum.Records.Bundles;

/// <summary>Names within a bundle.</summary>
internal static class BundleNames
{
    public const string Manifest = "manifest.json";
    public const string Signature = "manifest.sig";
    public const string PublicKey = "public-key.pem";
    public const string Ledger = "ledger.jsonl";

    /// <summary>Whether a file of that name, unpacked, would come to lie within the folder where the bundle is unpacked.</summary>
    public static bool StaysInside(string name) =>
        name.Length > 0
        && !name.AsSpan().ContainsAny('\\', '\0')
        && name is not [_, ':', ..]
        && name.Split('/').All(part => part is not ("" or "." or ".."));
}
