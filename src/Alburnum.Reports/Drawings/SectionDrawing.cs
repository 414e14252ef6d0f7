using System.Globalization;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Drawings;

/// <summary>A section to scale: its outline, the treated band as measured, what is left out, and the depth demanded.</summary>
public static class SectionDrawing
{
    private const double MarginMm = 7;
    private const int RimPoints = 180;

    /// <summary>Draws a section at full size, 1 mm to 1 mm, with a scale bar below.</summary>
    /// <param name="reading">The reading; one that was not determined draws an empty outline.</param>
    /// <param name="depthMm">Depth demanded everywhere, mm; null draws no line for it.</param>
    /// <param name="name">Name of the piece, for the title.</param>
    public static Drawing Draw(ReadingDocument reading, double? depthMm, string name)
    {
        var width = reading.SectionMm[0];
        var height = reading.SectionMm.Count > 1 ? reading.SectionMm[1] : width;
        IFaceMap map = reading.SectionMm.Count > 1 ? new Sawn(width, height) : new Round(width);
        var marks = new List<Mark> { new Area(map.Outline(0), Ink.Wood) };
        foreach (var face in reading.Faces)
        {
            marks.AddRange(Unread(face, map));
            marks.AddRange(Band(face, map));
            marks.AddRange(LeftOut(face, map));
        }
        if (map is Sawn)
            marks.AddRange(Corners(reading.Faces, map));
        if (depthMm is { } depth && depth < Math.Min(width, height) / 2)
        {
            // On a light line, so that the dashes are seen on dark and light wood alike.
            marks.Add(new Line(map.Outline(depth), Ink.Paper, 0.9, Closed: true));
            marks.Add(new Line(map.Outline(depth), Ink.Demand, 0.6, Dashed: true, Closed: true));
        }
        marks.Add(new Line(map.Outline(0), Ink.Text, 0.4, Closed: true));
        marks.AddRange(ScaleBar(MarginMm, MarginMm + height + 9, Math.Min(width, 50)));
        if (reading.Faces.Count > 1)
            marks.AddRange(FaceNumbers(width, height));
        return new Drawing(width + 2 * MarginMm, height + 2 * MarginMm + 9, Title(reading, name), marks);
    }

    private static string Title(ReadingDocument reading, string name) =>
        DrawingWords.Current.SectionTitle(name, reading.Depth is { } depth ? (depth.MinMm, depth.MeanMm) : null);

    /// <summary>The band of one face, an area for each unbroken run; bands of neighbouring faces overlap at the corners.</summary>
    private static IEnumerable<Mark> Band(FaceDocument face, IFaceMap map) =>
        Runs(face, leftOut: false)
            .Select(run => new Area(
                [
                    .. Along(face, run).Select(at => map.Place(face.Number, at.AlongMm, 0)),
                    .. Along(face, run).Reverse().Select(at => map.Place(face.Number, at.AlongMm, at.DepthMm)),
                ],
                Ink.Treated
            ));

    /// <summary>Stretches left out between two readings of one face: paler, from one depth to the other.</summary>
    private static IEnumerable<Mark> Unread(FaceDocument face, IFaceMap map)
    {
        foreach (var run in Runs(face, leftOut: true))
        {
            var (before, after) = (run.Start.Value - 1, run.End.Value);
            if (map is Round)
                (before, after) = ((before + face.DepthMm.Count) % face.DepthMm.Count, after % face.DepthMm.Count);
            if (before < 0 || after >= face.DepthMm.Count || face.Excluded[before] || face.Excluded[after])
                continue;
            var along = Along(face, run).Select(at => at.AlongMm).ToList();
            double Depth(double at) =>
                face.DepthMm[before]
                + (face.DepthMm[after] - face.DepthMm[before]) * (at - along[0]) / (along[^1] - along[0]);
            yield return new Area(
                [
                    .. along.Select(at => map.Place(face.Number, at, 0)),
                    .. Enumerable.Reverse(along).Select(at => map.Place(face.Number, at, Depth(at))),
                ],
                Ink.Between
            );
        }
    }

    /// <summary>A corner is not read along either face; it is paler, from the last reading of one to the first of the next.</summary>
    private static IEnumerable<Mark> Corners(IReadOnlyList<FaceDocument> faces, IFaceMap map)
    {
        for (var i = 0; i < faces.Count; i++)
        {
            var (face, next) = (faces[i], faces[(i + 1) % faces.Count]);
            if (
                Runs(face, leftOut: false).ToList() is not [.., var last]
                || Runs(next, leftOut: false).ToList() is not [var first, ..]
            )
                continue;
            var (end, start) = (Along(face, last).Last(), Along(next, first).First());
            if (last.End.Value == face.Excluded.Count && first.Start.Value == 0)
                continue;
            yield return new Area(
                [
                    map.Place(face.Number, end.AlongMm, 0),
                    map.Place(next.Number, 0, 0),
                    map.Place(next.Number, start.AlongMm, 0),
                    map.Place(next.Number, start.AlongMm, start.DepthMm),
                    map.Place(face.Number, end.AlongMm, end.DepthMm),
                ],
                Ink.Between
            );
        }
    }

    private static IEnumerable<Mark> LeftOut(FaceDocument face, IFaceMap map) =>
        Runs(face, leftOut: true)
            .Select(run => new Line(
                [.. Along(face, run).Select(at => map.Place(face.Number, at.AlongMm, -1.2))],
                Ink.LeftOut,
                0.8
            ));

    /// <summary>Places along a run, half a step longer at each end so that runs meet.</summary>
    private static IEnumerable<(double AlongMm, double DepthMm)> Along(FaceDocument face, Range run)
    {
        var (start, end) = (run.Start.Value, run.End.Value - 1);
        yield return (Math.Max(0, face.PositionsMm[start] - face.StepMm / 2), face.DepthMm[start]);
        for (var i = start; i <= end; i++)
            yield return (face.PositionsMm[i], face.DepthMm[i]);
        yield return (face.PositionsMm[end] + face.StepMm / 2, face.DepthMm[end]);
    }

    private static IEnumerable<Range> Runs(FaceDocument face, bool leftOut)
    {
        for (var start = 0; start < face.Excluded.Count; )
        {
            var end = start + 1;
            while (end < face.Excluded.Count && face.Excluded[end] == face.Excluded[start])
                end++;
            if (face.Excluded[start] == leftOut)
                yield return start..end;
            start = end;
        }
    }

    private static IEnumerable<Mark> ScaleBar(double left, double top, double longest)
    {
        var length =
            longest >= 50 ? 50
            : longest >= 20 ? 20
            : 10;
        yield return new Line([new(left, top), new(left + length, top)], Ink.Text, 0.5);
        yield return new Line([new(left, top - 1), new(left, top + 1)], Ink.Text, 0.5);
        yield return new Line([new(left + length, top - 1), new(left + length, top + 1)], Ink.Text, 0.5);
        yield return new Label(
            new(left + length + 2, top + 1.2),
            $"{length.ToString(CultureInfo.InvariantCulture)} mm",
            3.6,
            Anchor.Start,
            Ink.Quiet
        );
    }

    private static IEnumerable<Mark> FaceNumbers(double width, double height)
    {
        var (middleX, middleY) = (MarginMm + width / 2, MarginMm + height / 2);
        yield return new Label(new(middleX, MarginMm - 2), "1", 3.6, Anchor.Middle, Ink.Quiet);
        yield return new Label(new(MarginMm + width + 3, middleY + 1), "2", 3.6, Anchor.Middle, Ink.Quiet);
        yield return new Label(new(middleX, MarginMm + height + 4), "3", 3.6, Anchor.Middle, Ink.Quiet);
        yield return new Label(new(MarginMm - 3, middleY + 1), "4", 3.6, Anchor.Middle, Ink.Quiet);
    }

    /// <summary>Where a position along a face, and a depth into it, lie on the sheet.</summary>
    private interface IFaceMap
    {
        Spot Place(int face, double alongMm, double depthMm);

        IReadOnlyList<Spot> Outline(double depthMm);
    }

    private sealed class Sawn(double width, double height) : IFaceMap
    {
        public Spot Place(int face, double alongMm, double depthMm) =>
            face switch
            {
                1 => new(MarginMm + alongMm, MarginMm + depthMm),
                2 => new(MarginMm + width - depthMm, MarginMm + alongMm),
                3 => new(MarginMm + width - alongMm, MarginMm + height - depthMm),
                4 => new(MarginMm + depthMm, MarginMm + height - alongMm),
                _ => throw new ArgumentOutOfRangeException(nameof(face), face, "A sawn section has faces 1 to 4."),
            };

        public IReadOnlyList<Spot> Outline(double depthMm) =>
            [
                Place(1, depthMm, depthMm),
                Place(2, depthMm, depthMm),
                Place(3, depthMm, depthMm),
                Place(4, depthMm, depthMm),
            ];
    }

    /// <summary>Positions run clockwise along the rim from the top.</summary>
    private sealed class Round(double diameter) : IFaceMap
    {
        private readonly double _radius = diameter / 2;

        public Spot Place(int face, double alongMm, double depthMm)
        {
            var angle = alongMm / _radius - Math.PI / 2;
            return new(
                MarginMm + _radius + (_radius - depthMm) * Math.Cos(angle),
                MarginMm + _radius + (_radius - depthMm) * Math.Sin(angle)
            );
        }

        public IReadOnlyList<Spot> Outline(double depthMm) =>
            [.. Enumerable.Range(0, RimPoints).Select(i => Place(1, i * 2 * Math.PI * _radius / RimPoints, depthMm))];
    }
}
