using System.Text;
using System.Text.Json.Nodes;
using Alburnum.Records.Ledger;

namespace Alburnum.Records.Bundles;

/// <summary>What a bundle holds and whose it is; the signature is over its bytes. Fields as in docs/json/bundle.md.</summary>
/// <param name="Program">What made it.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="CaseNumber">Number of the case in the store that it comes from.</param>
/// <param name="Entries">How many entries its ledger has.</param>
/// <param name="Head">Hash of the last of them.</param>
/// <param name="Fingerprint">Fingerprint of the key that signs it.</param>
/// <param name="Files">Every other file of the bundle but signature and key.</param>
internal sealed record BundleManifest(
    string Program,
    DateTime MadeAt,
    int CaseNumber,
    int Entries,
    string Head,
    string Fingerprint,
    IReadOnlyList<BundledFile> Files
)
{
    private const string Format = "alburnum case bundle 1";

    /// <summary>The manifest as it is signed.</summary>
    public byte[] Write()
    {
        var files = new JsonObject();
        foreach (var file in Files.OrderBy(file => file.Path, StringComparer.Ordinal))
            files[file.Path] = new JsonObject { ["sha256"] = file.Sha256, ["bytes"] = file.Bytes };
        return LedgerJson.Lines(
            new JsonObject
            {
                ["format"] = Format,
                ["program"] = Program,
                ["made_at"] = LedgerJson.Moment(MadeAt),
                ["case"] = CaseNumber,
                ["entries"] = Entries,
                ["head"] = Head,
                ["key"] = Fingerprint,
                ["files"] = files,
            }
        );
    }

    /// <summary>Reads one; null where the bytes are none.</summary>
    public static BundleManifest? OrNull(byte[] bytes) =>
        LedgerJson.ReadOrNull(() =>
        {
            var manifest = LedgerJson.Object(Encoding.UTF8.GetString(bytes));
            return LedgerJson.String(manifest, "format") != Format
                ? throw new FormatException()
                : new BundleManifest(
                    LedgerJson.String(manifest, "program"),
                    LedgerJson.Moment(LedgerJson.String(manifest, "made_at")),
                    LedgerJson.Whole(manifest, "case"),
                    LedgerJson.Whole(manifest, "entries"),
                    LedgerJson.String(manifest, "head"),
                    LedgerJson.String(manifest, "key"),
                    [
                        .. manifest["files"]!
                            .AsObject()
                            .Select(file => new BundledFile(
                                file.Key,
                                LedgerJson.String(file.Value!.AsObject(), "sha256"),
                                file.Value["bytes"]!.GetValue<long>()
                            )),
                    ]
                );
        });
}

/// <summary>A file of a bundle.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Sha256">SHA-256 of its bytes.</param>
/// <param name="Bytes">Its length.</param>
internal sealed record BundledFile(string Path, string Sha256, long Bytes);
