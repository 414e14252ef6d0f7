using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Records.Tables;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Tables;

public sealed class ResultAndChargeTableTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    private string Write(string text)
    {
        File.WriteAllText(_path, text);
        return _path;
    }

    private BatchResults Results(string text, Section? section = null) =>
        ResultTable.Read(Table.Open(Write(text), null), section);

    private string Refusal(string text, Section? section = null) =>
        Assert.Throws<InputRefusedException>(() => ResultTable.Read(Table.Open(Write(text), null), section)).Message;

    private string ChargeRefusal(string text) =>
        Assert
            .Throws<InputRefusedException>(() => ChargeTable.Of(Table.Open(Write(text), null)).Charges(default).Count())
            .Message;

    [Fact]
    public void Judged_pieces_are_read()
    {
        var read = Assert.IsType<JudgedPieces>(Results("piece,result\nT1,pass\nT2,fail\nT3,not determined\n"));

        Assert.Equal(
            [("T1", Verdict.Conforms), ("T2", Verdict.DoesNotConform), ("T3", Verdict.Undecided)],
            read.Pieces
        );
    }

    [Fact]
    public void Depths_are_gathered_by_piece()
    {
        var read = Assert.IsType<MeasuredPieces>(
            Results(
                "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\nT1,1,10,7.5,0.3,30\nT1,1,20,8,0.3,\nT2,4,5,0,0.3,0\n",
                new RectangularSection(100, 100)
            )
        );

        Assert.Equal(["T1", "T2"], read.Pieces.Select(piece => piece.Piece));
        Assert.Equal(new(1, 10, 7.5, 0.3, 30), read.Pieces[0].Readings[0]);
        Assert.Null(read.Pieces[0].Readings[1].SapwoodDepthMm);
    }

    [Fact]
    public void A_piece_given_twice_is_refused_with_both_rows()
    {
        var said = Refusal("piece,result\nT1,pass\nT2,pass\nT1,fail\n");

        Assert.Contains("line 4", said, StringComparison.Ordinal);
        Assert.Contains("\"T1\", already on line 2", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_are_no_result_are_refused() =>
        Assert.Contains(
            "found \"maybe\", expected pass, fail or not determined",
            Refusal("piece,result\nT1,maybe\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public void Mixed_units_are_refused_with_the_row()
    {
        var said = Refusal(
            "piece,face,position_mm,depth_mm,u_mm\nT1,1,10,7.5,0.3\nT1,1,20,0.3 in,0.3\n",
            new RectangularSection(100, 100)
        );

        Assert.Contains(
            "line 3, field depth_mm: found \"0.3 in\", expected 0 to 50 mm",
            said,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "depth_in",
            Refusal("piece,face,position_mm,depth_in,u_mm\nT1,1,10,0.3,0.01\n", new RectangularSection(100, 100)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Depths_without_a_section_are_refused() =>
        Assert.Contains(
            ": found depths, without the section of their pieces, expected the section as well, a size such as",
            Refusal("piece,face,position_mm,depth_mm,u_mm\nT1,1,10,7.5,0.3\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public void Values_may_be_cut_off_below_detection_or_where_reading_ends()
    {
        var read = ValueTable.Read(
            Table.Open(Write("piece,retention_kg_per_m3\nT1,12.4\nT2,< 0.5\nT3,>25\nT4,>= 26\n"), null)
        );

        Assert.Equal("kg/m³", read.Measure.Unit);
        Assert.Equal(
            [
                new(12.4, Censoring.Exact),
                new(0.5, Censoring.AtMost),
                new(25, Censoring.AtLeast),
                new(26, Censoring.AtLeast),
            ],
            read.Pieces.Select(piece => piece.Reading)
        );
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-3")]
    [InlineData("12 lb/ft3")]
    [InlineData("<")]
    [InlineData("")]
    public void Values_that_are_none_are_refused_with_the_row(string cell) =>
        Assert.Contains(
            "line 3, field retention_kg_per_m3: found",
            Assert
                .Throws<InputRefusedException>(() =>
                    ValueTable.Read(Table.Open(Write($"piece,retention_kg_per_m3\nT1,12\nT2,{cell}\n"), null))
                )
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_file_that_is_no_table_and_a_sheet_of_a_CSV_are_refused()
    {
        Assert.Contains(
            "no such file",
            Assert.Throws<InputRefusedException>(() => Table.Open(_path + ".none", null)).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "CSV has none",
            Assert.Throws<InputRefusedException>(() => Table.Open(_path, "May")).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_table_without_rows_is_refused() =>
        Assert.Contains("no rows", Refusal("piece,result\n"), StringComparison.Ordinal);

    [Fact]
    public void Charges_are_read_one_by_one()
    {
        var table = ChargeTable.Of(
            Table.Open(
                Write("charge,date,mean_depth_mm,retention_kg_per_m3\nC1,2026-01-02,7.5,12\nC2,2026-01-03,,13.5\n"),
                null
            )
        );
        var charges = table.Charges(default).Select(charge => (charge.Number, Values: charge.Values.ToList())).ToList();

        Assert.Equal(["mean depth", "retention"], table.Measures.Select(measure => measure.Name));
        Assert.Equal("C2", charges[1].Number);
        Assert.Equal([null, 13.5], charges[1].Values);
    }

    [Fact]
    public void A_charge_given_twice_is_refused() =>
        Assert.Contains(
            "line 3, field charge: found \"C1\", already on line 2",
            ChargeRefusal("charge,mean_depth_mm\nC1,7\nC1,8\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_unit_in_a_cell_is_refused_with_the_row() =>
        Assert.Contains(
            "line 3, row \"C2\", field mean_depth_mm: found \"0.3 in\", expected a plain number, 0 to 1000 mm",
            ChargeRefusal("charge,mean_depth_mm\nC1,7\nC2,0.3 in\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public void An_unknown_column_a_missing_cell_and_an_empty_history_are_refused()
    {
        Assert.Contains(
            "field colour: found an unknown column",
            ChargeRefusal("charge,mean_depth_mm,colour\nC1,7,red\n"),
            StringComparison.Ordinal
        );
        Assert.Contains("1 cells", ChargeRefusal("charge,mean_depth_mm\nC1\n"), StringComparison.Ordinal);
        Assert.Contains("no charges", ChargeRefusal("charge,mean_depth_mm\n"), StringComparison.Ordinal);
    }
}
