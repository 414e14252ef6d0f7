using Alburnum.Cases;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;

namespace Alburnum.Workflows.Tests.Cases;

public sealed class LeftOutTests : IDisposable
{
    private const string Plain = """
        reference: T-1
        title: Purlins
        client: Thornhollow estate
        sectionsCut: 2026-05-12
        rulebook: european-2007
        component: fence post
        section: 75 x 150 mm
        species: Norway spruce
        useClass: 4
        serviceLife: 15 years
        statedClass: NP3
        indicator: copper-blue
        batch: { pieces: 2, mustPass: 75 % }
        rulerReadings: readings.csv
        """;

    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private readonly TemporaryFolder _folder = new();

    public LeftOutTests() =>
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\nP01,1,37,20,0.5,30\nP01,2,75,20,0.5,30\nP01,3,37,20,0.5,30\nP01,4,75,20,0.5,30\n"
        );

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_photograph_left_out_is_read_and_the_case_judged_with_it()
    {
        Photograph("spoilt.jpg");
        var run = await Run("leftOut: [ { photograph: spoilt.jpg, reason: the saw slipped } ]");

        var leftOut = Assert.IsType<LeftOutRead>(Assert.Single(run.LeftOut.Each));
        Assert.Equal("the saw slipped", leftOut.Photograph.Reason);
        Assert.Equal(leftOut.Photograph.File!.Sha256, leftOut.Reading.Sha256);
        Assert.IsType<Read>(leftOut.Reading.Outcome);
        Assert.Single(run.Judged.Pieces);
        Assert.Equal(["P01", "spoilt.jpg"], leftOut.With!.Pieces.Select(piece => piece.Evidence.Piece));
        Assert.NotEqual(run.Judged.Overall.Verdict, leftOut.With.Overall.Verdict);
        Assert.Null(run.LeftOut.Together);
    }

    [Fact]
    public async Task A_second_photograph_of_a_piece_stands_in_place_of_the_first()
    {
        Photograph("again.jpg");
        var run = await Run("leftOut: [ { photograph: again.jpg, piece: P01, reason: out of focus } ]");

        var leftOut = Assert.IsType<LeftOutRead>(Assert.Single(run.LeftOut.Each));
        Assert.Equal("P01", Assert.Single(leftOut.With!.Pieces).Evidence.Piece);
        Assert.NotEqual(run.Judged.Pieces[0].Judgement.Verdict, leftOut.Piece!.Judgement.Verdict);
    }

    [Fact]
    public async Task What_is_no_photograph_is_listed_with_its_hash_and_not_judged()
    {
        _folder.Write("broken.jpg", "no photograph at all");
        var run = await Run("leftOut: [ { photograph: broken.jpg, reason: the card was damaged } ]");

        var leftOut = Assert.IsType<LeftOutUnread>(Assert.Single(run.LeftOut.Each));
        Assert.Equal(64, leftOut.Photograph.File!.Sha256.Length);
    }

    [Fact]
    public async Task More_photographs_than_the_batch_has_pieces_cannot_be_judged_together()
    {
        Photograph("one.jpg");
        Photograph("two.jpg");
        const string both =
            "leftOut: [ { photograph: one.jpg, reason: glare }, { photograph: two.jpg, reason: glare } ]";
        var few = await Run(both);
        var enough = await Run(both, Plain.Replace("pieces: 2", "pieces: 20", StringComparison.Ordinal));

        Assert.All(few.LeftOut.Each, each => Assert.NotNull(Assert.IsType<LeftOutRead>(each).With));
        Assert.Null(few.LeftOut.Together);
        Assert.Equal(3, enough.LeftOut.Together!.Pieces.Count);
    }

    [Theory]
    [InlineData("first.jpg", "second.jpg")]
    [InlineData("second.jpg", "first.jpg")]
    public async Task Of_two_photographs_of_one_piece_the_worse_stands_with_all_left_out(string one, string other)
    {
        Photograph("first.jpg");
        Photograph("second.jpg", "P07.jpg");
        var run = await Run(
            $"leftOut: [ {{ photograph: {one}, piece: P01, reason: glare }}, {{ photograph: {other}, piece: P01, reason: glare }} ]",
            Plain + "\nstatedSapwood: 30 mm"
        );

        var chances = run.LeftOut.Each.Select(each => Chance(Assert.IsType<LeftOutRead>(each).Piece!)).ToList();
        Assert.NotEqual(chances[0], chances[1]);
        Assert.Equal(chances.Min(), Chance(Assert.Single(run.LeftOut.Together!.Pieces)));

        static double Chance(JudgedPiece piece) => piece.Judgement.Probability!.Value.Middle;
    }

    [Fact]
    public async Task A_photograph_left_out_is_of_incised_timber_where_the_case_says_so()
    {
        Photograph("spoilt.jpg");
        var run = await Run("incised: yes\nleftOut: [ { photograph: spoilt.jpg, reason: the saw slipped } ]");

        Assert.True(Assert.IsType<LeftOutRead>(Assert.Single(run.LeftOut.Each)).Piece!.Evidence.IsIncised);
    }

    [Fact]
    public async Task What_is_left_out_is_kept_with_the_run()
    {
        Photograph("spoilt.jpg");
        var run = await Run("leftOut: [ { photograph: spoilt.jpg, reason: the saw slipped } ]");

        Assert.Equal(
            ["spoilt.jpg"],
            run.Folder.Run(DateTime.UnixEpoch, Verdict.Conforms, "{}").Photographs.Select(kept => kept.FileName)
        );
    }

    private void Photograph(string name, string shown = "P01.jpg") =>
        File.Copy(Repository.At("examples", "footbridge-joists", shown), _folder.At(name));

    private Task<CaseReading> Run(string leftOut, string plain = Plain)
    {
        _folder.Write("case.yaml", $"{plain}\n{leftOut}");
        return RunCase.JudgeAsync(
            new FolderFiles(_folder.Path),
            Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
    }
}
