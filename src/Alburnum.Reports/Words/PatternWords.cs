using Alburnum.Penetration;

namespace Alburnum.Reports.Words;

/// <summary>What a depth profile looks like, in words: what it may be, and what would confirm it.</summary>
/// <param name="wording">The language.</param>
public sealed class PatternWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static PatternWords Current => new(Wording.Current);

    /// <summary>What it looks like; never more than that.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A pattern of a kind that no sentence is known for.</exception>
    public string LooksLike(DepthPattern pattern) =>
        pattern switch
        {
            UntreatedHeartwood(var share) => wording.Say(
                "patterns.untreated-heartwood",
                ("share", Figures.WholePercent(share, wording))
            ),
            CutThroughBorder(var face, var others) => wording.Say(
                "patterns.cut-through-border",
                Face(face),
                Others(others)
            ),
            BareFace(var face, var others) => wording.Say("patterns.bare-face", Face(face), Others(others)),
            TwoBareFaces(var first, var second, var areOpposite, var others) => wording.Say(
                areOpposite ? "patterns.two-bare-faces-opposite" : "patterns.two-bare-faces",
                ("first", Figures.Whole(first)),
                ("second", Figures.Whole(second)),
                Others(others)
            ),
            OneTreatedFace(var face, var depth) => wording.Say(
                "patterns.one-treated-face",
                Face(face),
                ("depth", Figures.Number(depth, 1))
            ),
            BareAllRound => wording.Say("patterns.bare-all-round"),
            BareHeartwoodFace(var face) => wording.Say("patterns.bare-heartwood-face", Face(face)),
            ShallowFace(var face, var depth, var others) => wording.Say(
                "patterns.shallow-face",
                Face(face),
                Others(others),
                ("depth", Figures.Number(depth, 1)),
                ("less", Figures.Number(others - depth, 1))
            ),
            ThinSkin(var mean) => wording.Say("patterns.thin-skin", ("mean", Figures.Number(mean, 1))),
            BarePatch(var face, var from, var to, var mayBeHeartwood) => wording.Say(
                mayBeHeartwood ? "patterns.bare-patch-or-heartwood" : "patterns.bare-patch",
                Face(face),
                ("from", Figures.Number(from, 0)),
                ("to", Figures.Number(to, 0))
            ),
            TreatedThroughout => wording.Say("patterns.treated-throughout"),
            EndGrainOnly(var past) => wording.Say("patterns.end-grain-only", ("past", Figures.Number(past, 0))),
            _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern."),
        };

    /// <summary>What would confirm it, or show that it is something else.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A pattern of a kind that no sentence is known for.</exception>
    public string WouldConfirm(DepthPattern pattern) =>
        wording.Say(
            pattern switch
            {
                UntreatedHeartwood => "patterns.confirm.untreated-heartwood",
                CutThroughBorder or ShallowFace => "patterns.confirm.worked-after",
                BareFace or TwoBareFaces or OneTreatedFace => "patterns.confirm.bare-face",
                BareAllRound => "patterns.confirm.bare-all-round",
                BareHeartwoodFace => "patterns.confirm.bare-heartwood-face",
                ThinSkin => "patterns.confirm.thin-skin",
                BarePatch => "patterns.confirm.bare-patch",
                TreatedThroughout => "patterns.confirm.treated-throughout",
                EndGrainOnly => "patterns.confirm.end-grain-only",
                _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern."),
            }
        );

    private static (string, string) Face(int number) => ("face", Figures.Whole(number));

    private static (string, string) Others(double mm) => ("others", Figures.Number(mm, 1));
}
