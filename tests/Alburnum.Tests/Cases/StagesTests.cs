using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Cases;
using Alburnum.Impregnation.Prediction;
using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Tests.Cases;

public sealed class StagesTests
{
    private static readonly Section Square = new RectangularSection(100, 100);
    private static readonly Provenance Invented = new(Standing.CommonPractice, "common practice", "", "", "");

    [Fact]
    public void Deep_pieces_conform_and_the_batch_with_them()
    {
        var result = Run(Depth(6), [Piece("P01", 9), Piece("P02", 10)], [Assay(9)], retention: 8);

        Assert.Equal(Verdict.Conforms, result.Overall.Verdict);
        Assert.All(result.Pieces, piece => Assert.Equal(Verdict.Conforms, piece.Judgement.Verdict));
    }

    [Fact]
    public void Shallow_pieces_do_not_conform()
    {
        var result = Run(Depth(6), [Piece("P01", 2, 30), Piece("P02", 3, 30)], [Assay(9)], retention: 8);

        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
    }

    [Fact]
    public void Good_penetration_with_too_little_preservative_does_not_conform()
    {
        var result = Run(Depth(6), [Piece("P01", 9), Piece("P02", 10)], [Assay(5)], retention: 8);

        Assert.Equal(Verdict.Conforms, result.Batch!.Penetration.Verdict);
        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
    }

    [Fact]
    public void A_missing_assay_is_said_and_does_not_pass_in_silence()
    {
        var result = Run(Depth(6), [Piece("P01", 9), Piece("P02", 10)], [], retention: 8);

        Assert.Equal(Verdict.Undecided, result.Overall.Verdict);
        Assert.Equal([result.Batch!.Parts, new RetentionNotAssayed()], result.Overall.Reasons);
    }

    [Fact]
    public void A_batch_without_any_figure_for_retention_says_so()
    {
        var result = Run(Depth(6), [Piece("P01", 9), Piece("P02", 10)], [], retention: null);

        Assert.Equal(Verdict.Conforms, result.Overall.Verdict);
        Assert.Equal([result.Batch!.Parts, new RetentionNotStated()], result.Overall.Reasons);
    }

    [Fact]
    public void A_contract_that_asks_for_more_decides_and_the_code_is_judged_beside_it()
    {
        var result = Stated("deep", Piece("P01", 9, 30), Piece("P02", 10, 30));

        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
        Assert.Equal(
            [(true, "deep", Verdict.DoesNotConform), (false, "depth", Verdict.Conforms)],
            result.ByDemand.Select(each => (each.IsContract, each.Name, each.Penetration.Verdict))
        );
        Assert.All(result.Pieces, piece => Assert.Equal(Verdict.DoesNotConform, piece.Judgement.Verdict));
        Assert.Single(result.Overall.Reasons.OfType<TwoDemands>());
    }

    [Fact]
    public void A_contract_that_asks_for_less_leaves_the_code_to_decide()
    {
        var result = Stated("shallow", Piece("P01", 4, 30), Piece("P02", 4, 30));

        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
        Assert.Equal(
            [Verdict.Conforms, Verdict.DoesNotConform],
            result.ByDemand.Select(each => each.Penetration.Verdict)
        );
    }

    [Fact]
    public void Of_two_demands_neither_of_which_is_sure_to_meet_the_other_both_must_be_met()
    {
        var required = StatedCase("other").Under(Code(Depth(6)), Classes);

        Assert.Equal(
            new AllOf([new LeastDepth(WoodZone.Sapwood, 6), new LeastDepth(WoodZone.Lateral, 3)]),
            required.Penetration
        );
    }

    [Fact]
    public void A_class_of_the_contract_that_nobody_knows_is_said_to_be_not_judged()
    {
        var result = Stated("NP7", Piece("P01", 9, 30), Piece("P02", 10, 30));

        Assert.Contains(new ContractNotJudged(new ContractClassNotKnown("NP7")), result.Findings.NotJudged);
        Assert.Equal(Verdict.Undecided, result.Findings.Weakest);
        Assert.Empty(result.ByDemand);
    }

    [Fact]
    public void A_class_of_the_contract_for_a_milder_use_is_never_the_whole_of_a_headline()
    {
        Row Use(string key, Field field, string word, string label, UseClass use, params IReadOnlyList<string> over) =>
            new(
                key,
                Subject.UseClass,
                [new OneOf(field, [word])],
                new UseClassDemand(label, [use], null),
                over,
                Invented
            );
        var code = Code(Depth(6));
        var byClass = new Rulebook([
            .. code.Rows,
            Use("of AB", Field.StatedClass, "AB", "3.2", UseClass.ThreeTwo, "post"),
            Use("post", Field.Component, "post", "4", UseClass.Four),
        ])
        {
            Name = code.Name,
            Title = code.Title,
            Document = code.Document,
            Edition = code.Edition,
        };
        var stated = Case([Assay(9)], retention: 8) with
        {
            Enquiry = new() { Component = new("post"), StatedClass = "AB" },
        };

        var found = stated
            .Under(byClass)
            .Predicted(null, null)
            .Measured([Piece("P01", 9)])
            .Judged(DecisionRule.Usual)
            .Findings;

        Assert.Equal(Verdict.Conforms, found.Rule.Whole.Verdict);
        Assert.Equal("AB", Assert.Single(found.NotJudged.OfType<UseNotJudged>()).Of.Contract!.StatedClass);
        Assert.Equal(Verdict.Undecided, found.Weakest);
    }

    [Fact]
    public void Moisture_that_is_limited_and_not_stated_is_said_to_be_not_judged()
    {
        var limit = new Row("dry", Subject.Moisture, [], new MoistureLimit(28), [], Invented);
        var code = Code(Depth(6));
        var limited = new Rulebook([.. code.Rows, limit])
        {
            Name = code.Name,
            Title = code.Title,
            Document = code.Document,
            Edition = code.Edition,
        };
        var case1 = Case([Assay(9)], retention: 8);
        BatchFindings Found(EnquiredCase each) =>
            each.Under(limited).Predicted(null, null).Measured([Piece("P01", 9)]).Judged(DecisionRule.Usual).Findings;

        Assert.Contains(new MoistureNotStated(28), Found(case1).NotJudged);
        Assert.DoesNotContain(
            new MoistureNotStated(28),
            Found(case1 with { Enquiry = case1.Enquiry with { MoisturePercent = 24 } }).NotJudged
        );
    }

    [Fact]
    public void A_piece_that_could_not_be_read_is_undecided_since_no_depth_is_known()
    {
        var unread = new PieceEvidence("P01", EvidenceKind.Photograph, null);

        var result = Run(Depth(6), [unread], [Assay(9)], retention: 8);

        var judgement = Assert.Single(result.Pieces).Judgement;
        Assert.Equal((Verdict.Undecided, (ProbabilityRange?)null), (judgement.Verdict, judgement.Probability));
        Assert.Equal([new DepthNotDetermined()], judgement.Reasons);
        Assert.Equal(Verdict.Undecided, result.Overall.Verdict);
    }

    [Fact]
    public void A_piece_measured_from_points_off_the_edge_is_undecided_however_deep_it_reads()
    {
        var result = Run(Depth(6), [Piece("P01", 40) with { IsOffEdge = true }], [Assay(9)], retention: 8);

        var judgement = Assert.Single(result.Pieces).Judgement;
        Assert.Equal((Verdict.Undecided, (ProbabilityRange?)null), (judgement.Verdict, judgement.Probability));
        Assert.Equal([new OutlineOffEdge()], judgement.Reasons);
        Assert.Null(result.Measured.MeanDepthMm);
    }

    [Fact]
    public void What_the_code_forbids_does_not_conform_however_deep_it_went()
    {
        var result = Run(new Forbidden("Not with this timber."), [Piece("P01", 40)], [Assay(9)], retention: 8);

        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
        Assert.Null(result.Overall.Probability);
        Assert.Equal(new CodeForbids((NotPermitted)result.Required.Answer), result.Overall.Reasons[0]);
        // The contract's own figure is judged all the same.
        Assert.Equal(Verdict.Conforms, result.Findings.Rule.Retention!.Verdict);
        Assert.Equal([new NoDepthKnown()], Assert.Single(result.Pieces).Judgement.Reasons);
        Assert.Null(result.Batch);
    }

    [Fact]
    public void A_cell_that_is_not_in_the_rulebook_leaves_the_case_undecided()
    {
        var result = Run(new UnknownCell("Not read."), [Piece("P01", 9)], [Assay(9)], retention: 8);

        Assert.Equal(
            (Verdict.Undecided, (ProbabilityRange?)null),
            (result.Overall.Verdict, result.Overall.Probability)
        );
        Assert.Equal(new RulebookSilent((NotCovered)result.Required.Answer), result.Overall.Reasons[0]);
        Assert.Equal(Verdict.Conforms, result.Findings.Rule.Retention!.Verdict);
        Assert.Equal(
            [new DepthNotJudged(), new RetentionOfCodeNotKnown(), new ZoneTakenForGranted(Zone: null)],
            result.Findings.NotJudged
        );
    }

    [Fact]
    public void A_retention_that_is_not_met_decides_where_no_depth_is_known()
    {
        var result = Run(new UnknownCell("Not read."), [Piece("P01", 9)], [Assay(5)], retention: 8);

        Assert.Equal(Verdict.DoesNotConform, result.Overall.Verdict);
        Assert.Equal(Verdict.DoesNotConform, result.Findings.Rule.Retention!.Verdict);
    }

    [Fact]
    public void A_stated_sapwood_depth_fills_in_only_where_none_was_seen()
    {
        var result = Run(
            Depth(6),
            [Piece("P01", 9, sapwoodMm: 12), Piece("P02", 9)],
            [Assay(9)],
            retention: 8,
            sapwoodMm: 30
        );

        Assert.All(SapwoodOf(result, 0), depth => Assert.Equal(12, depth));
        Assert.All(SapwoodOf(result, 1), depth => Assert.Equal(30, depth));
    }

    [Fact]
    public void A_shallow_piece_of_unknown_sapwood_is_undecided_until_the_sapwood_is_stated()
    {
        PieceEvidence[] shallow = [Piece("P01", 2)];

        Assert.Equal(Verdict.Undecided, Run(Depth(6), shallow, [Assay(9)], 8).Overall.Verdict);
        Assert.Equal(Verdict.DoesNotConform, Run(Depth(6), shallow, [Assay(9)], 8, sapwoodMm: 30).Overall.Verdict);
    }

    [Fact]
    public void Each_stage_keeps_the_one_before()
    {
        var enquired = Case([Assay(9)], retention: 8);
        var required = enquired.Under(Code(Depth(6)));
        var predicted = required.Predicted(prediction: null, charge: null);
        var measured = predicted.Measured([Piece("P01", 9)]);
        var judged = measured.Judged(DecisionRule.Usual);

        Assert.Same(enquired, judged.Enquired);
        Assert.Same(required, judged.Required);
        Assert.Same(predicted, judged.Predicted);
        Assert.Same(measured, judged.Measured);
    }

    [Fact]
    public void Nothing_that_was_seen_of_the_sapwood_gives_way_to_what_is_stated() =>
        Gen.Select(Gen.Double[0.1, 40].Array[1, 4], Gen.Double[0.1, 40])
            .Sample(
                (seen, stated) =>
                {
                    PieceEvidence[] pieces =
                    [
                        .. seen.Select((mm, i) => Piece($"P{i}", 5, mm)),
                        Piece("unseen", 5, sapwoodMm: null),
                    ];

                    var measured = Case([], 8, stated).Under(Code(Depth(6))).Predicted(null, null).Measured(pieces);

                    Assert.All(
                        seen.Index(),
                        each =>
                            Assert.Equal(
                                pieces[each.Index].Profile!.Faces,
                                measured.Evidence[each.Index].Profile!.Faces,
                                SameSapwood
                            )
                    );
                    Assert.All(measured.Evidence[^1].Profile!.Faces[0].SapwoodDepthMm, mm => Assert.Equal(stated, mm));
                },
                iter: 100
            );

    [Fact]
    public void The_contract_s_own_retention_is_asked_for_whatever_the_code_says()
    {
        Assert.Equal(8, Case([], retention: 8).Under(Code(Depth(6))).RequiredKgPerM3);
        Assert.Null(Case([], retention: null).Under(Code(Depth(6))).RequiredKgPerM3);
        Assert.Equal(8, Case([], retention: 8).Under(Code(new Forbidden("Not this timber."))).RequiredKgPerM3);
        Assert.Null(Case([], retention: null).Under(Code(new Forbidden("Not this timber."))).RequiredKgPerM3);
    }

    [Fact]
    public void A_mean_outside_the_predicted_range_is_remarked_on_and_none_within_it() =>
        Gen.Select(Gen.Double[1, 40].Array[1, 6], Gen.Double[1, 40], Gen.Double[0, 10])
            .Sample(
                (depths, low, width) =>
                {
                    PieceEvidence[] pieces = [.. depths.Select((mm, i) => Piece($"P{i}", mm))];
                    var measured = Case([], 8)
                        .Under(Code(Depth(6)))
                        .Predicted(Expecting(new(low, low + width / 2, low + width)), charge: null)
                        .Measured(pieces);
                    var mean = measured.MeanDepthMm!.Value;

                    Assert.Equal(depths.Average(), mean.Value, 1e-9);
                    Assert.Equal(mean.Value < low || mean.Value > low + width, measured.Remarks.Count == 1);
                },
                iter: 300
            );

    [Theory]
    [InlineData(2, 1)]
    [InlineData(9.5, 0)]
    [InlineData(20, 1)]
    public void Of_incised_timber_a_mean_on_either_side_of_the_range_contradicts_it(double depthMm, int remarks)
    {
        var plain = Case([], 8);
        var incised = plain with { Enquiry = plain.Enquiry with { IsIncised = true } };
        var predicted = incised.Under(Code(Depth(6))).Predicted(Expecting(new(8, 9, 10)), charge: null);

        Assert.Equal(
            remarks,
            predicted.Measured([Piece("P01", depthMm)]).Remarks.OfType<MeasuredOutsidePrediction>().Count()
        );
    }

    [Fact]
    public void A_sample_whose_parts_do_not_stand_as_the_formula_has_them_is_remarked_on()
    {
        var substances = new Substances(
            new Dictionary<string, Fact<double>>(StringComparer.Ordinal)
            {
                ["Cu"] = new(64, Invented),
                ["O"] = new(16, Invented),
            },
            [],
            [],
            []
        );
        var copper = new PartOffFormula(substances.Find("CuO")!, new(0.6, 0.01), 0.2);
        var product = new ProductFormula("own", "own", [new(copper.Compound, 0.2)], null);
        var plain = Case([new MeasuredAssay(new(9, 0.3), "S1") { PartsOffFormula = [copper] }], 8);
        var counted = plain with { AssayBasis = new() { Product = product } };

        var remark = Assert.Single(
            counted.Under(Code(Depth(6))).Predicted(null, null).Measured([Piece("P01", 9)]).Remarks
        );

        var off = Assert.IsType<SampleOffFormula>(remark);
        Assert.Equal(("S1", product, copper), (off.Sample, off.Product, Assert.Single(off.Parts)));
    }

    [Fact]
    public void Samples_of_which_parts_were_not_analysed_are_remarked_on_together()
    {
        var known = new Fact<double>(1, Invented);
        var copper = new Substances(
            new Dictionary<string, Fact<double>>(StringComparer.Ordinal) { ["Cu"] = known },
            [],
            [],
            []
        ).Find("Cu")!;
        Assay Partial(string sample) => new MeasuredAssay(new(5, 0.3), sample) { PartsNotAnalysed = [copper] };
        var counted = Case([Partial("S1"), Partial("S2"), new MeasuredAssay(new(5, 0.3), "S3")], 8) with
        {
            AssayBasis = new() { Product = new("own", "own", [new(copper, 0.2)], null) },
        };

        var remark = Assert.Single(
            counted.Under(Code(Depth(6))).Predicted(null, null).Measured([Piece("P01", 9)]).Remarks
        );

        var partial = Assert.IsType<SamplesInPart>(remark);
        Assert.Equal(["S1", "S2"], partial.Samples);
        Assert.Equal(["Cu"], partial.Parts);
    }

    [Theory]
    [InlineData("quat", "azole", 1)]
    [InlineData("azole", "azole", 0)]
    public void A_retention_counted_as_another_preservative_than_the_one_stated_is_remarked_on(
        string stated,
        string counted,
        int remarks
    )
    {
        static Preservative Kind(string key) =>
            new(key, key, [], [], "", [], [], true, [], false, [], [], [], Invented);
        var enquired = Case([Assay(9)], 8) with
        {
            AssayBasis = new() { Product = new("own", "own", [], null), ProductKind = Kind(counted) },
        };
        enquired = enquired with { Enquiry = enquired.Enquiry with { PreservativeKind = Kind(stated) } };

        var measured = enquired.Under(Code(Depth(6))).Predicted(null, null).Measured([Piece("P01", 9)]);

        Assert.Equal(remarks, measured.Remarks.OfType<ProductOfAnotherKind>().Count());
    }

    [Fact]
    public void The_mean_of_alike_pieces_is_no_surer_than_one_of_them() =>
        Gen.Select(Gen.Double[1, 40], Gen.Int[1, 8])
            .Sample(
                (depthMm, count) =>
                {
                    PieceEvidence[] pieces = [.. Enumerable.Range(0, count).Select(i => Piece($"P{i}", depthMm))];

                    Assert.Equal(
                        pieces[0].Profile!.Statistics.MeanMm.StandardUncertainty,
                        Measured(pieces).MeanDepthMm!.Value.StandardUncertainty,
                        1e-9
                    );
                },
                iter: 100
            );

    [Fact]
    public void Scatter_between_pieces_makes_their_mean_less_sure()
    {
        var reading = Piece("P01", 9).Profile!.Statistics.MeanMm.StandardUncertainty;

        // Depths 8 and 10: s = √2, s/√2 = 1.
        Assert.Equal(
            Math.Sqrt(1 + reading * reading),
            Measured([Piece("P01", 8), Piece("P02", 10)]).MeanDepthMm!.Value.StandardUncertainty,
            1e-9
        );
    }

    [Fact]
    public void Pieces_that_could_not_be_read_have_no_mean() =>
        Assert.Null(Measured([new("P01", EvidenceKind.Photograph, null)]).MeanDepthMm);

    [Fact]
    public void Sections_cut_before_the_treatment_are_remarked_on()
    {
        var early = Case([], 8) with { TreatedOn = new(2026, 5, 20) };
        var late = Case([], 8) with { TreatedOn = new(2026, 5, 1) };

        Assert.Equal(
            [new SampledBeforeTreated(new(2026, 5, 12), new(2026, 5, 20))],
            RemarksOf(early, [Piece("P01", 8)])
        );
        Assert.Empty(RemarksOf(late, [Piece("P01", 8)]));
    }

    [Fact]
    public void Moisture_measured_after_the_treatment_is_remarked_on()
    {
        var treated = Case([], 8) with { TreatedOn = new(2026, 5, 1) };

        Assert.Equal(
            [new MoistureMeasuredLater(new(2026, 5, 2), new(2026, 5, 1))],
            RemarksOf(treated with { MoistureMeasuredOn = new(2026, 5, 2) }, [Piece("P01", 8)])
        );
        Assert.Empty(RemarksOf(treated with { MoistureMeasuredOn = new(2026, 4, 30) }, [Piece("P01", 8)]));
    }

    [Fact]
    public void A_sapwood_stated_of_timber_without_a_border_is_remarked_on()
    {
        Species spruce = new(
            "spruce",
            ["Picea abies"],
            WoodType.Softwood,
            null,
            null,
            null,
            new(new(SapwoodBand.NotDistinct, SapwoodBand.NotDistinct), Invented),
            null,
            ""
        );
        var stated = Case([], 8, sapwoodMm: 25);
        var ofSpruce = stated with { Enquiry = stated.Enquiry with { Species = spruce } };

        SapwoodAsStated asStated = new(
            new(25, PieceEvidence.SapwoodToTheMillimetreMm),
            IsUncertaintyStated: false,
            MovesDemand: false
        );
        Assert.Equal([new BorderNotDistinct(spruce, 25), asStated], RemarksOf(ofSpruce, [Piece("P01", 8)]));
        Assert.Equal([asStated], RemarksOf(stated, [Piece("P01", 8)]));
        Assert.Empty(RemarksOf(stated, [Piece("P01", 8, sapwoodMm: 20)]));
    }

    [Theory]
    [InlineData(true, false, typeof(IncisionsNotSeen))]
    [InlineData(false, true, typeof(IncisionsNotStated))]
    [InlineData(true, true, null)]
    [InlineData(false, false, null)]
    [InlineData(null, true, null)]
    public void What_is_said_of_incising_is_held_against_the_front(bool? isStated, bool hasFingers, Type? remark)
    {
        // A finger 3 mm wide and 4 mm deeper than the border, every 20 mm.
        var front = Front(i => hasFingers && i % 20 is (9 or 10 or 11) ? 9 : 5);
        PieceEvidence piece = new("P01", EvidenceKind.Photograph, front) { IsIncised = isStated };

        Assert.Equal(remark is null ? [] : [remark], RemarksOf(Case([], 8), [piece]).Select(each => each.GetType()));
    }

    [Fact]
    public void Sizes_taken_on_trust_are_remarked_on_once_with_their_number()
    {
        PieceEvidence piece = new("P01", EvidenceKind.Photograph, Front(_ => 8)) { IsSizeOnTrust = true };

        Assert.Equal(
            [new SizesOnTrust(2)],
            RemarksOf(
                Case([], 8),
                [piece, piece with { Piece = "P02" }, piece with { Piece = "P03", IsSizeOnTrust = false }]
            )
        );
    }

    [Fact]
    public void A_contract_decides_alone_where_the_code_asks_for_nothing_or_is_silent()
    {
        JudgedCase Under(Demand code, params IReadOnlyList<PieceEvidence> pieces) =>
            StatedCase("deep")
                .Under(Code(code), Classes)
                .Predicted(null, null)
                .Measured(pieces)
                .Judged(DecisionRule.Usual);
        var none = Under(new NoTreatment("It lasts."), Piece("P01", 2, 30));
        var silent = Under(new UnknownCell("Not read."), Piece("P01", 30, 30));

        Assert.Equal(Verdict.DoesNotConform, none.Overall.Verdict);
        Assert.Equal(none.Required.Answer, Assert.Single(none.Overall.Reasons.OfType<OnlyContractDemands>()).Code);
        Assert.Equal(8, none.Required.RequiredKgPerM3);
        Assert.Equal(new ZoneTakenForGranted(Zone: null), Assert.Single(none.Findings.NotJudged.OfType<CaseReason>()));
        Assert.Equal(Verdict.Conforms, silent.Batch!.Penetration.Verdict);
        Assert.Single(silent.Findings.NotJudged.OfType<RulebookSilent>());
    }

    [Fact]
    public void Timber_that_the_code_forbids_does_not_conform_though_the_contracts_class_is_met()
    {
        var result = StatedCase("deep")
            .Under(Code(new Forbidden("Not this timber.")), Classes)
            .Predicted(null, null)
            .Measured([Piece("P01", 40, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(Verdict.Conforms, result.Batch!.Penetration.Verdict);
        Assert.Equal((Verdict.DoesNotConform, null), (result.Overall.Verdict, result.Overall.Probability));
        Assert.Equal(result.Required.Answer, Assert.Single(result.Overall.Reasons.OfType<OnlyContractDemands>()).Code);
    }

    [Theory]
    [InlineData(null, 3, Verdict.DoesNotConform, Verdict.DoesNotConform)]
    [InlineData(null, 8, Verdict.Conforms, Verdict.Undecided)]
    [InlineData("shallow", 4, Verdict.DoesNotConform, Verdict.DoesNotConform)]
    [InlineData("shallow", 8, Verdict.Conforms, Verdict.Undecided)]
    [InlineData("deep", 20, Verdict.DoesNotConform, Verdict.DoesNotConform)]
    [InlineData("deep", 30, Verdict.Conforms, Verdict.Conforms)]
    public void Of_an_open_demand_the_least_is_judged_and_meeting_it_decides_nothing_unless_every_one_is_met(
        string? contract,
        double depthMm,
        Verdict penetration,
        Verdict overall
    )
    {
        var result = StatedCase(contract ?? "none")
            .Under(OpenCode(Depth(6), Depth(10)), contract is null ? [] : [Classes])
            .Predicted(null, null)
            .Measured([Piece("P01", depthMm, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal((penetration, overall), (result.Batch!.Penetration.Verdict, result.Overall.Verdict));
        Assert.Equal(
            Depth(6).Depth,
            Assert.Single(result.Overall.Reasons.OfType<LeastOfCode>()).Demand.Requirement.Penetration
        );
        Assert.Equal(contract is not "deep", result.Findings.NotJudged.OfType<RulebookSilent>().Any());
    }

    [Fact]
    public void Where_one_of_the_answers_possible_asks_for_nothing_no_demand_is_sure()
    {
        var open = Assert.IsType<NotCovered>(
            OpenCode(new NoTreatment("It lasts."), Depth(10)).Answer(Case([], 8).Enquiry)
        );

        Assert.Equal([false, true], open.Possible.Select(each => each.Where[0].IsSo).Order());
        Assert.Null(open.Least);
    }

    [Fact]
    public void What_is_read_of_the_answers_possible_is_said_beside_what_is_not()
    {
        var open = Assert.IsType<NotCovered>(
            OpenCode(new UnknownCell("Not read."), Depth(10)).Answer(Case([], 8).Enquiry)
        );

        Assert.Equal(
            [(false, AnswerOutcome.NotCovered), (true, AnswerOutcome.Required)],
            open.Possible.Select(each => (each.Where[0].IsSo, each.Answer.Outcome)).Order()
        );
        Assert.Null(open.Least);
        Assert.Empty(
            Assert
                .IsType<NotCovered>(
                    OpenCode(new UnknownCell("Not read."), new UnknownCell("Nor this.")).Answer(Case([], 8).Enquiry)
                )
                .Possible
        );
    }

    [Theory]
    [InlineData(9, Verdict.DoesNotConform)]
    [InlineData(15, Verdict.Conforms)]
    public void A_retention_that_the_code_settles_counts_where_its_depth_is_not_read(double assay, Verdict verdict)
    {
        var twelve = new FixedRetention(new PreservativeAmount(12, AmountUnit.KgPerM3));
        var code = new Rulebook([
            new("depth", Subject.Penetration, [], new UnknownCell("Not read."), [], Invented),
            new("amount", Subject.Retention, [], twelve, [], Invented),
        ])
        {
            Name = "invented",
            Title = "Invented code",
            Document = "Invented",
            Edition = "1",
        };

        var judged = (StatedCase("shallow") with { Assays = [Assay(assay)] })
            .Under(code, Classes)
            .Predicted(null, null)
            .Measured([Piece("P01", 9, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Contains(judged.Required.Retentions, each => each is { By: RetentionDemandedBy.Code, KgPerM3: 12 });
        Assert.Equal(verdict, judged.Batch!.Retention!.Verdict);
    }

    [Fact]
    public void An_assay_of_a_zone_for_which_nothing_is_required_is_remarked_on_and_not_counted()
    {
        var depth = new PenetrationDemand(
            "depth",
            new LeastDepth(WoodZone.Sapwood, 6),
            new(new AnalyticalZone(6, "outer 6 mm"), Invented),
            Invented
        );
        Assay deeper = new MeasuredAssay(new Estimate(5, 0.2), "S2") { Zone = new(12) };

        var judged = Case([Assay(9) with { Zone = new(6) }, deeper], retention: 8)
            .Under(Code(depth))
            .Predicted(null, null)
            .Measured([Piece("P01", 9, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(Verdict.Conforms, judged.Batch!.Retention!.Verdict);
        Assert.Equal(deeper, Assert.Single(judged.Measured.Remarks.OfType<OtherZoneAssayed>()).Assay);
    }

    [Fact]
    public void Timber_that_is_forbidden_one_way_must_meet_the_demand_of_the_other()
    {
        var open = Assert.IsType<NotCovered>(
            OpenCode(Depth(6), new Forbidden("Heartwood.")).Answer(Case([], 8).Enquiry)
        );

        Assert.Equal(Depth(6).Depth, open.Least?.Requirement.Penetration);
        Assert.False(open.IsMetBy(new ShareOfZone(WoodZone.Lateral, 1)));
    }

    // What it asks for turns on whether heartwood reaches a face.
    private static Rulebook OpenCode(Demand withoutHeartwood, Demand withHeartwood) =>
        new([
            new(
                "without",
                Subject.Penetration,
                [new OneOf(Field.ExposedHeartwood, ["no"])],
                withoutHeartwood,
                [],
                Invented
            ),
            new("with", Subject.Penetration, [new OneOf(Field.ExposedHeartwood, ["yes"])], withHeartwood, [], Invented),
        ])
        {
            Name = "open",
            Title = "Invented code",
            Document = "Invented",
            Edition = "3",
        };

    [Fact]
    public void A_class_that_nobody_knows_is_said_to_be_not_judged_where_the_code_asks_for_nothing_too()
    {
        var judged = StatedCase("NP7")
            .Under(Code(new NoTreatment("It lasts.")), Classes)
            .Predicted(null, null)
            .Measured([Piece("P01", 9, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(
            [
                new ContractNotJudged(new ContractClassNotKnown("NP7")),
                new DepthNotJudged(),
                new ZoneTakenForGranted(Zone: null),
            ],
            judged.Findings.NotJudged
        );
    }

    [Theory]
    [InlineData(8, 4, 5, Verdict.DoesNotConform)]
    [InlineData(4, 8, 5, Verdict.DoesNotConform)]
    [InlineData(4, 8, 9, Verdict.Conforms)]
    public void Of_two_retentions_the_greater_decides_and_each_is_judged(
        double code,
        double contract,
        double assay,
        Verdict verdict
    )
    {
        var judged = Case([Assay(assay)], contract)
            .Under(Amounts("invented", "depth", [], code))
            .Predicted(null, null)
            .Measured([Piece("P01", 9, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(verdict, judged.Batch!.Retention!.Verdict);
        Assert.Equal(verdict, judged.Overall.Verdict);
        Assert.Equal(
            [
                (RetentionDemandedBy.Code, code, assay > code),
                (RetentionDemandedBy.Contract, contract, assay > contract),
            ],
            Assert
                .Single(judged.Overall.Reasons.OfType<RetentionsJudged>())
                .Each.Select(each => (each.Demand.By, each.Demand.KgPerM3, each.Judgement.Verdict == Verdict.Conforms))
        );
    }

    [Fact]
    public void The_retention_of_the_contract_s_class_is_judged_and_one_that_is_not_known_is_said_so()
    {
        JudgedCase With(double? ofClass)
        {
            var plain = Case([Assay(9)], retention: null);
            return (plain with { Enquiry = plain.Enquiry with { StatedClass = "H" } })
                .Under(
                    Amounts("invented", "depth", [], 8),
                    Amounts("classes", "H", [new OneOf(Field.StatedClass, ["H"])], ofClass)
                )
                .Predicted(null, null)
                .Measured([Piece("P01", 9, 30)])
                .Judged(DecisionRule.Usual);
        }

        var known = With(12);
        Assert.Equal(12, known.Required.RequiredKgPerM3);
        Assert.Equal(Verdict.DoesNotConform, known.Overall.Verdict);
        Assert.Empty(known.Findings.NotJudged.OfType<RetentionOfClassNotKnown>());
        Assert.Equal(8, With(null).Required.RequiredKgPerM3);
        Assert.Contains(new RetentionOfClassNotKnown("H"), With(null).Findings.NotJudged);
    }

    [Fact]
    public void A_code_that_asks_for_none_but_is_silent_on_insects_is_not_said_to_be_silent_on_all()
    {
        var termites = new Insect("termites", [], null, "wood", Invented);
        var plain = Case([], retention: null);
        var judged = (plain with { Enquiry = plain.Enquiry with { Exposure = new() { Insects = [termites] } } })
            .Under(Code(new NoTreatment("Dry wood does not decay.")))
            .Predicted(null, null)
            .Measured([Piece("P01", 9)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(Verdict.Undecided, judged.Overall.Verdict);
        Assert.Equal(
            [termites],
            Assert.IsType<CodeSilentOnInsects>(Assert.Single(judged.Overall.Reasons)).There.Insects
        );
    }

    private static Rulebook Amounts(string name, string depth, IReadOnlyList<Condition> when, double? kgPerM3)
    {
        var penetration = new PenetrationDemand(depth, new LeastDepth(WoodZone.Sapwood, 6), null, Invented);
        Row[] rows = [new("depth", Subject.Penetration, when, penetration, [], Invented)];
        return new(
            kgPerM3 is { } kg
                ?
                [
                    .. rows,
                    new(
                        "amount",
                        Subject.Retention,
                        when,
                        new FixedRetention(new PreservativeAmount(kg, AmountUnit.KgPerM3)),
                        [],
                        Invented
                    ),
                ]
                : rows
        )
        {
            Name = name,
            Title = $"Invented {name}",
            Document = "Invented",
            Edition = "1",
        };
    }

    private static IReadOnlyList<CaseRemark> RemarksOf(EnquiredCase @case, IReadOnlyList<PieceEvidence> pieces) =>
        @case.Under(Code(Depth(6))).Predicted(null, null).Measured(pieces).Remarks;

    private static DepthProfile Front(Func<int, double> depthMm)
    {
        FaceProfile[] faces =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(face => new FaceProfile(
                    face,
                    1,
                    [.. Enumerable.Range(0, 100).Select(i => i + 0.5)],
                    [.. Enumerable.Range(0, 100).Select(depthMm)],
                    [.. Enumerable.Repeat(0.2, 100)],
                    new bool[100],
                    new double?[100]
                )),
        ];
        return new(Square, faces, SectionDepth.Of(faces, 0.1)!, new(0.3, 0.01), null);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_batch_judged_by_what_the_code_recommends_says_so(bool isRecommended)
    {
        var demand = new PenetrationDemand("NP1", new NoDepth(), null, Invented) { IsRecommended = isRecommended };
        var judged = StatedCase("none")
            .Under(Code(demand))
            .Predicted(null, null)
            .Measured([Piece("P01", 2, 30)])
            .Judged(DecisionRule.Usual);
        Assert.Equal(isRecommended, judged.Findings.Rule.Whole.Reasons.OfType<CodeOnlyRecommends>().Any());
    }

    private static readonly Rulebook Classes = new([
        Class("deep", new ShareOfZone(WoodZone.Sapwood, 1)),
        Class("shallow", new LeastDepth(WoodZone.Sapwood, 3)),
        Class("other", new LeastDepth(WoodZone.Lateral, 3)),
    ])
    {
        Name = "classes",
        Title = "Invented classes",
        Document = "Invented",
        Edition = "2",
    };

    private static Row Class(string name, DepthRule depth) =>
        new(
            name,
            Subject.Penetration,
            [new OneOf(Field.StatedClass, [name])],
            new PenetrationDemand(name, depth, null, Invented),
            [],
            Invented
        );

    private static EnquiredCase StatedCase(string name)
    {
        var plain = Case([Assay(9)], retention: 8);
        return plain with { Enquiry = plain.Enquiry with { StatedClass = name } };
    }

    private static JudgedCase Stated(string name, params IReadOnlyList<PieceEvidence> pieces) =>
        StatedCase(name)
            .Under(Code(Depth(6)), Classes)
            .Predicted(null, null)
            .Measured(pieces)
            .Judged(DecisionRule.Usual);

    private static MeasuredCase Measured(IReadOnlyList<PieceEvidence> pieces) =>
        Case([], 8).Under(Code(Depth(6))).Predicted(null, null).Measured(pieces);

    private static QuickPrediction Expecting(Spread meanMm) =>
        new()
        {
            Pieces = 100,
            Places = [],
            DepthMm = [],
            LeastMm = meanMm,
            BorderMm = meanMm,
            MeanMm = meanMm,
            UptakeLPerM3 = meanMm,
            KeptLPerM3 = meanMm,
            ZoneLPerM3 = meanMm,
            PieceShare = new(1, 0),
            CoreShare = new(1, 0),
            BatchShares = [],
        };

    private static bool SameSapwood(FaceProfile one, FaceProfile other) =>
        one.SapwoodDepthMm.SequenceEqual(other.SapwoodDepthMm);

    private static IReadOnlyList<double?> SapwoodOf(JudgedCase result, int piece) =>
        result.Pieces[piece].Evidence.Profile!.Faces[0].SapwoodDepthMm;

    private static JudgedCase Run(
        Demand demand,
        IReadOnlyList<PieceEvidence> evidence,
        IReadOnlyList<Assay> assays,
        double? retention,
        double? sapwoodMm = null
    ) =>
        Case(assays, retention, sapwoodMm)
            .Under(Code(demand))
            .Predicted(prediction: null, charge: null)
            .Measured(evidence)
            .Judged(DecisionRule.Usual);

    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.75, false)]
    [InlineData(0.9, false)]
    public void A_share_that_lets_more_fail_than_the_codes_AQL_is_said_with_the_rule(double share, bool isSaid)
    {
        var code = Code(Depth(6));
        Rulebook withAql = new([
            .. code.Rows,
            new("aql", Subject.Acceptance, [], new AcceptableQuality(25), [], Invented),
        ])
        {
            Name = code.Name,
            Title = code.Title,
            Document = code.Document,
            Edition = code.Edition,
        };
        var judged = (Case([Assay(9)], retention: 8) with { Acceptance = new ShareMustPass(share) })
            .Under(withAql)
            .Predicted(null, null)
            .Measured([Piece("P01", 9, 30)])
            .Judged(DecisionRule.Usual);

        Assert.Equal(
            isSaid ? [new RuleAsksLessThanCode(share, new(25, Invented))] : [],
            judged.Batch!.Penetration.Reasons.OfType<RuleAsksLessThanCode>()
        );
    }

    [Theory]
    [InlineData(null, 0.2887, false)]
    [InlineData(2.0, 2.0, true)]
    public void A_sapwood_as_stated_carries_an_uncertainty_into_the_verdict(
        double? stated,
        double carried,
        bool isStated
    )
    {
        var whole = new PenetrationDemand("whole", new ShareOfZone(WoodZone.Sapwood, 1), null, Invented);
        JudgedCase Judged(double? u) =>
            (Case([], retention: null, sapwoodMm: 25) with { StatedSapwoodUMm = u })
                .Under(Code(whole))
                .Predicted(null, null)
                .Measured([Piece("P01", 25)])
                .Judged(DecisionRule.Usual);
        var judged = Judged(stated);
        var decided = judged.Pieces[0].Judgement.Reasons.OfType<DecidedAt>().Single();

        Assert.Equal(carried, judged.Pieces[0].Evidence.Profile!.Faces[0].SapwoodUncertaintyMm, 4);
        Assert.Equal(double.Hypot(0.3, carried), decided.StandardUncertaintyMm, 3);
        var remark = judged.Measured.Remarks.OfType<SapwoodAsStated>().Single();
        Assert.Equal((isStated, true), (remark.IsUncertaintyStated, remark.MovesDemand));
    }

    [Theory]
    [InlineData(6, null)]
    [InlineData(20, 0.3)]
    [InlineData(25, 0.3)]
    public void A_border_read_with_a_ruler_is_as_uncertain_as_the_depth_beside_it_and_said_where_it_counts(
        double requiredMm,
        double? saidMm
    )
    {
        var measured = Case([], retention: null)
            .Under(Code(Depth(requiredMm)))
            .Predicted(null, null)
            .Measured([Piece("P01", 20, sapwoodMm: 20)]);
        var decided = measured.Judged(DecisionRule.Usual).Pieces[0].Judgement.Reasons.OfType<DecidedAt>().Single();

        Assert.Equal(saidMm, measured.Remarks.OfType<SapwoodByRuler>().SingleOrDefault()?.UMm);
        // What is required ends with the sapwood: at its border it moves with it only on the near side, beyond it on both.
        Assert.Equal(
            double.Hypot(
                0.3,
                requiredMm switch
                {
                    6 => 0,
                    20 => 0.15,
                    _ => 0.3,
                }
            ),
            decided.StandardUncertaintyMm,
            6
        );
    }

    [Fact]
    public void A_sapwood_that_was_seen_carries_no_uncertainty_of_one_that_is_stated() =>
        Assert.Equal(
            0.3,
            (Case([], null, sapwoodMm: 25) with { StatedSapwoodUMm = 2 })
                .Under(Code(Depth(6)))
                .Predicted(null, null)
                .Measured([Piece("P01", 9, sapwoodMm: 20)])
                .Evidence[0]
                .Profile!.Faces[0]
                .SapwoodUncertaintyMm
        );

    [Fact]
    public void Advice_stands_where_the_cell_is_not_known_and_what_a_treatment_is_asked_for_not_where_none_is()
    {
        Row advice = new("advice", Subject.Advice, [], new Advice("Keep the end clear of the ground."), [], Invented);
        Row moisture = new("dry", Subject.Moisture, [], new MoistureLimit(28), [], Invented);
        Answer Of(Demand demand) =>
            new Rulebook([new("only", Subject.Penetration, [], demand, [], Invented), advice, moisture])
            {
                Name = "invented",
                Title = "Invented code",
                Document = "Invented",
                Edition = "1",
            }.Answer(new());

        Assert.Equal([new RowAdvises(advice)], Assert.IsType<NotCovered>(Of(new UnknownCell("Not read."))).Advice);
        var trace = Assert.IsType<NotNeeded>(Of(new NoTreatment("Dry."))).Trace.WithoutTreatment;
        Assert.Null(trace.Step(Subject.Moisture));
        Assert.Null(trace.Step(Subject.Retention));
        Assert.NotNull(trace.Step(Subject.Penetration));
    }

    [Fact]
    public void A_retention_required_on_a_face_is_spread_over_the_zone_that_is_assayed()
    {
        var onFace = new FixedRetention(new PreservativeAmount(24, AmountUnit.GramPerM2));
        RequiredCase Under(AnalyticalZone? zone, double? assayedMm)
        {
            var depth = new PenetrationDemand(
                "depth",
                new LeastDepth(WoodZone.Lateral, 3),
                zone is null ? null : new(zone, Invented),
                Invented
            );
            var book = new Rulebook([
                new("depth", Subject.Penetration, [], depth, [], Invented),
                new("amount", Subject.Retention, [], onFace, [], Invented),
            ])
            {
                Name = "invented",
                Title = "Invented code",
                Document = "Invented",
                Edition = "1",
            };
            return (Case([], retention: null) with { AssayBasis = new() { ZoneDepthMm = assayedMm } }).Under(book);
        }

        Assert.Equal(8, Under(new(3, "outer 3 mm"), null).RequiredKgPerM3);
        Assert.Equal(8, Under(new(3, "outer 3 mm"), 6).RequiredKgPerM3);
        Assert.Equal(4, Under(null, 6).RequiredKgPerM3);
        Assert.Equal(2, Under(new(15, "from 3 to 15 mm") { FromMm = 3 }, null).RequiredKgPerM3);
        Assert.Null(Under(null, null).RequiredKgPerM3);
    }

    private static Rulebook Code(Demand demand) =>
        new([new Row("only", Subject.Penetration, [], demand, [], Invented)])
        {
            Name = "invented",
            Title = "Invented code",
            Document = "Invented",
            Edition = "1",
        };

    private static EnquiredCase Case(IReadOnlyList<Assay> assays, double? retention, double? sapwoodMm = null) =>
        new(
            "T-1",
            "Title",
            "Client",
            new DateOnly(2026, 5, 12),
            new Enquiry { Section = Square, UseClasses = [UseClass.Four] },
            50,
            new ShareMustPass(0.75),
            assays,
            retention,
            sapwoodMm
        );

    private static PenetrationDemand Depth(double depthMm) =>
        new("depth", new LeastDepth(WoodZone.Sapwood, depthMm), null, Invented);

    private static MeasuredAssay Assay(double kgPerM3) => new(new Estimate(kgPerM3, 0.2), "composite");

    private static PieceEvidence Piece(string name, double depthMm, double? sapwoodMm = null)
    {
        HandReading[] readings =
        [
            .. Enumerable.Range(1, 4).Select(face => new HandReading(face, 50, depthMm, 0.3, sapwoodMm)),
        ];
        return new PieceEvidence(name, EvidenceKind.Ruler, HandReadings.Profile(Square, readings));
    }
}
