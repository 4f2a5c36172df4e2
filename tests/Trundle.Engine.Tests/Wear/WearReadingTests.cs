using Trundle.Engine.Condition;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Engine.Wear;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Wear;

/// <summary>What the depths alone say, what else is known adds, and what is never said.</summary>
public sealed class WearReadingTests
{
    [Fact]
    public void Every_share_and_prior_adds_up_to_one_and_every_pattern_has_causes()
    {
        WearData.Forms.Sum(f => f.Prior).ShouldBe(1, 1e-9);
        foreach (var form in WearData.Forms)
        {
            WearData.Shares.Where(s => s["pattern"] == form.Pattern && s["form"] == form.Form).Sum(s => WearData.Number(s["share"])).ShouldBe(1, 1e-9, $"{form.Pattern} {form.Form}");
        }

        foreach (var cause in WearData.Causes)
        {
            (WearData.Number(cause["pressure_low"]) + WearData.Number(cause["pressure_right"]) + WearData.Number(cause["pressure_high"])).ShouldBe(1, 1e-9, cause["cause"]);
        }
    }

    // The service texts' pairs: vehicle makers' texts 1997 to 2011 and TM 9-2610-200-14 p. 2-12 (read).
    [Theory]
    [InlineData("centre", "over-inflation")]
    [InlineData("centre", "acceleration")]
    [InlineData("both-shoulders", "under-inflation")]
    [InlineData("both-shoulders", "overload")]
    [InlineData("both-shoulders", "construction")]
    [InlineData("one-shoulder", "camber")]
    [InlineData("feather", "toe-in")]
    [InlineData("cups", "shock-absorber")]
    [InlineData("cups", "unbalance")]
    [InlineData("cups", "bearing")]
    [InlineData("cups", "runout")]
    [InlineData("diagonal", "dual-mismatch")]
    [InlineData("heel-and-toe", "late-rotation")]
    [InlineData("flat-spot", "locked-brake")]
    [InlineData("flat-spot", "brake-held")]
    public void The_pairs_of_pattern_and_cause_that_service_texts_name_are_held_and_never_one_alone(string pattern, string cause)
    {
        var shares = WearData.Shares.Where(s => s["pattern"] == pattern).ToList();
        shares.ShouldContain(s => s["cause"] == cause);
        shares.Select(s => s["cause"]).Distinct().Count().ShouldBeGreaterThan(2);
    }

    // A vehicle maker's text of 1997 (read): high edges towards the vehicle's middle are excess toe-in, away from it toe-out.
    [Theory]
    [InlineData(1.2, "toe-in")]
    [InlineData(-1.2, "toe-out")]
    public void The_high_edge_of_a_feathered_rib_tells_toe_in_from_toe_out(double innerHigher, string cause)
    {
        var feather = Read(Ribbed(innerHigher)).Likeliest;
        feather.Pattern.ShouldBe(WearPattern.Feather);
        feather.Causes[0].Cause.ShouldBe(cause);
        feather.Evidence.ShouldContain(innerHigher > 0 ? "1.2 mm higher" : "1.2 mm lower");
    }

    [Theory]
    [InlineData(1.4)]
    [InlineData(-1.4)]
    public void Blocks_lower_at_either_edge_are_heel_and_toe(double leadingHigher)
    {
        var tread = Flat(5) with { Blocks = [.. Enum.GetValues<TreadPlace>().Select(p => new BlockEdges(p, Mm(5 + leadingHigher), Mm(5)))] };
        Read(tread).Likeliest.Pattern.ShouldBe(WearPattern.HeelAndToe);
    }

    [Fact]
    public void The_same_wear_mirrored_is_the_other_shoulder_with_the_same_probability()
    {
        var inner = Read(new TreadDepths(Row(3), Row(4.5), Row(5))).Of(WearPattern.OneShoulder);
        var outer = Read(new TreadDepths(Row(5), Row(4.5), Row(3))).Of(WearPattern.OneShoulder);
        inner.EvidenceLogRatio.ShouldBeGreaterThan(2);
        inner.Forms[0].Form.ShouldBe("inner");
        outer.Forms[0].Form.ShouldBe("outer");
        new TreadDepths(Row(3), Row(4.5), Row(5)) { Ribs = [new RibEdges(TreadPlace.Inner, Mm(3), Mm(4))] }.Turned().Ribs.ShouldBe([new RibEdges(TreadPlace.Outer, Mm(4), Mm(3))]);
    }

    [Fact]
    public void The_level_of_the_tread_changes_nothing()
    {
        var deep = Read(new TreadDepths(Row(8, 8.1, 7.9), Row(7, 7.2, 7.1), Row(8.1, 8, 8)));
        var worn = Read(new TreadDepths(Row(4, 4.1, 3.9), Row(3, 3.2, 3.1), Row(4.1, 4, 4)));
        foreach (var pattern in deep.Patterns)
        {
            worn.Of(pattern.Pattern).Probability.ShouldBe(pattern.Probability, 1e-6);
        }
    }

    [Fact]
    public void A_single_depth_leaves_what_is_held_likely_of_any_tyre_and_says_so()
    {
        var wear = Read(new TreadDepths([], Row(4.3), []));
        foreach (var pattern in wear.Patterns)
        {
            pattern.Probability.ShouldBe(pattern.Prior, 1e-6, pattern.Pattern.Word());
        }

        wear.Cautions.ShouldContain(c => c.StartsWith("Few depths", StringComparison.Ordinal));
        wear.Patterns.Sum(p => p.Probability).ShouldBe(1, 1e-9);
        Read(new TreadDepths([], [], []), expect: 0);
    }

    // GUM's uniform law (calculated in the reference figures): a gauge that shows 32nds has 0.2291 mm of its own.
    [Fact]
    public void A_gauge_with_a_coarse_step_says_less()
    {
        var thirtySeconds = 25.4 / 32;
        var coarse = Read(new TreadDepths(Row(6 * thirtySeconds), Row(7 * thirtySeconds), Row(7 * thirtySeconds)));
        var fine = Read(new TreadDepths(Row(4.76), Row(5.56), Row(5.56)));
        coarse.Of(WearPattern.OneShoulder).EvidenceLogRatio.ShouldBeLessThan(fine.Of(WearPattern.OneShoulder).EvidenceLogRatio - 0.1);
        (thirtySeconds / Math.Sqrt(12)).ShouldBe(0.2291, 0.00005);
    }

    [Fact]
    public void Pressure_found_axle_and_the_other_tyre_shift_causes_and_patterns()
    {
        var worn = new TreadDepths(Row(3.5), Row(5), Row(3.6));
        var low = At("1L", worn, 180).Of(WearPattern.BothShoulders);
        var right = At("1L", worn, 230).Of(WearPattern.BothShoulders);
        Cause(low, "under-inflation").ShouldBeGreaterThan(Cause(right, "under-inflation") + 0.2);
        Cause(At("1L", new TreadDepths(Row(5), Row(3.4), Row(5)), 310).Of(WearPattern.Centre), "over-inflation").ShouldBeGreaterThan(0.5);

        // Hard acceleration wears a driven axle: on the axle that only rolls it is nearly out.
        var centre = new TreadDepths(Row(5), Row(3.4), Row(5));
        Cause(At("1L", centre, null).Of(WearPattern.Centre), "acceleration").ShouldBeGreaterThan(4 * Cause(At("2L", centre, null).Of(WearPattern.Centre), "acceleration"));

        // Nothing pairs unlike duals on a single wheel.
        Cause(At("2L", worn, null).Of(WearPattern.Diagonal), "dual-mismatch").ShouldBe(0);

        // The other tyre alike: a cause that works on both sides gains over one that works on one wheel.
        var both = Bay.Four().With("1L", a => a with { Tread = Ribbed(0.6) }).With("1R", a => a with { Tread = Ribbed(1.3) });
        var feather = WearReading.Of(both)[0].Of(WearPattern.Feather);
        Cause(feather, "toe-in").ShouldBeGreaterThan(Cause(Read(Ribbed(0.6)).Of(WearPattern.Feather), "toe-in"));
        feather.Probability.ShouldBeGreaterThan(Read(Ribbed(0.6)).Of(WearPattern.Feather).Probability);
    }

    [Fact]
    public void A_motorcycle_has_no_toe_no_camber_and_no_rotation()
    {
        var subject = Bay.Four(null, Bay.Car with { VehicleClass = "motorcycle" }).With("1L", a => a with { Tread = new TreadDepths(Row(3), Row(4.6), Row(5)) });
        var wear = WearReading.Of(subject).Single();
        wear.Patterns.Sum(p => p.Probability).ShouldBe(1, 1e-9);
        wear.Patterns.SelectMany(p => p.Causes).Where(c => c.Probability > 0).Select(c => c.Cause).Distinct().ShouldNotContain(c => c.StartsWith("toe", StringComparison.Ordinal) || c == "camber" || c == "no-rotation" || c == "late-rotation" || c == "dual-mismatch");
        Cause(wear.Of(WearPattern.OneShoulder), "cornering").ShouldBeGreaterThan(0.1);
    }

    [Fact]
    public void The_next_step_is_one_that_was_not_made_and_parts_the_two_likeliest()
    {
        var across = Read(new TreadDepths(Row(3.8), Row(4.6), Row(4.9)));
        across.Likeliest.NextStep.ShouldNotBeNull().Step.ShouldNotBe("across");
        Read(Ribbed(0.5)).Patterns.ShouldAllBe(p => p.NextStep!.Step != "rib-edges" && p.NextStep.Step != "block-edges");
        var doubt = Read(new TreadDepths(Row(5.2, 5.1, 5), Row(5, 5, 5), Row(4.8, 4.8, 4.9)));
        doubt.Of(WearPattern.Feather).NextStep!.Step.ShouldBe("rib-edges");
        doubt.Of(WearPattern.HeelAndToe).NextStep!.Step.ShouldBe("block-edges");
    }

    [Fact]
    public void A_loose_bearing_or_a_broken_belt_is_cautioned_as_long_as_it_is_not_excluded()
    {
        var cupped = Read(new TreadDepths(Row(5, 3.4, 5, 3.5, 5.1, 3.4), Row(5, 3.5, 5, 3.5, 5, 3.4), Row(5, 3.3, 5, 3.6, 5, 3.4)));
        cupped.Likeliest.Pattern.ShouldBe(WearPattern.Cups);
        cupped.Cautions.ShouldContain(c => c.Contains("bearing", StringComparison.Ordinal) && c.Contains("Before it is driven again", StringComparison.Ordinal));
        cupped.Cautions.ShouldContain(c => c.Contains("belt", StringComparison.Ordinal));
        Read(new TreadDepths(Row(5, 5, 5), Row(5, 5, 5), Row(5, 5, 5))).Cautions.ShouldBeEmpty();
        ConditionCheck.Run(Bay.Four().With("1L", a => a with { Tread = new TreadDepths(Row(5, 3.4, 5, 3.5, 5.1, 3.4), Row(5, 3.5, 5, 3.5, 5, 3.4), Row(5, 3.3, 5, 3.6, 5, 3.4)) }))
            .One("wear.cups", "1L").Cautions.ShouldNotBeEmpty();
    }

    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    public void Readings_at_the_ends_of_what_is_taken_still_give_probabilities(double millimetres)
    {
        var many = Enumerable.Repeat(millimetres, 40).ToArray();
        var wear = Read(new TreadDepths(Row(many), Row(many), Row([.. many.Select((_, i) => i % 2 == 0 ? 0.0 : 30)])));
        wear.Patterns.Sum(p => p.Probability).ShouldBe(1, 1e-9);
        wear.Patterns.ShouldAllBe(p => double.IsFinite(p.Probability) && p.Causes.Count > 0);
    }

    private static double Cause(PatternReading pattern, string cause) => pattern.Causes.Single(c => c.Cause == cause).Probability;

    private static TyreWear At(string position, TreadDepths tread, double? kilopascals) => WearReading.Of(Bay.Four().With(position, a => a with
    {
        Tread = tread,
        Pressure = kilopascals is { } kPa ? new PressureReading(GaugePressure.FromKilopascals(kPa), null, false) : null,
    })).Single();

    private static TreadDepths Flat(double depth) => new(Row(depth, depth, depth), Row(depth, depth, depth), Row(depth, depth, depth));

    private static TreadDepths Ribbed(double innerHigher) => Flat(5) with
    {
        Ribs = [.. Enum.GetValues<TreadPlace>().Select(p => new RibEdges(p, Mm(5 + innerHigher), Mm(5)))],
        Blocks = [new BlockEdges(TreadPlace.Centre, Mm(5), Mm(5))],
    };

    private static TyreWear Read(TreadDepths tread)
    {
        return WearReading.Of(new FittedVehicle(new Vehicle(), [Bay.On("1L") with { Tread = tread }], null, null)).Single();
    }

    private static void Read(TreadDepths tread, int expect) => WearReading.Of(new FittedVehicle(new Vehicle(), [Bay.On("1L") with { Tread = tread }], null, null)).Count.ShouldBe(expect);

    private static Length Mm(double depth) => Length.FromMillimetres(depth);

    private static Length[] Row(params double[] depths) => [.. depths.Select(Mm)];
}
