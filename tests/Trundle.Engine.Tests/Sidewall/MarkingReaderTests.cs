using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Tests.Sidewall;

/// <summary>Readings of markings that the published vectors do not hold.</summary>
public sealed class MarkingReaderTests
{
    [Theory]
    [InlineData("205/55R16 91V", "205/55 r16 91v", "205/55 R 16", "205 / 55 R16", " 205/55\u00a0R16\t91 V ", "205/55ZR16 91V", "205/55 HR 16", "205/55RF16")]
    [InlineData("P195/75R14", "p195/75 R14", "P 195/75 R 14 91S")]
    [InlineData("LT235/85R16", "LT235/85R16/E 120/116R", "LT 235/85 R16 LRE", "235/85R16LT", "LT235/85R16C", "LT235/85R16 LOAD RANGE E")]
    [InlineData("31x10.50R15LT", "31X10.50 R 15 LT", "31×10,50R15LT", "LT31x10.5R15", "31x10.50R15 109Q")]
    [InlineData("7.50-16LT", "7,50 - 16 LT", "7.5–16 LT 8PR", "7.50-16 LT LRD")]
    [InlineData("T125/70D16", "t125/70 d16 96M", "T125/70 D 16")]
    [InlineData("H78-15", "h78-15", "H 78 - 15", "H78-15 LRB")]
    [InlineData("190/65HR390 TRX", "190/65 HR 390", "190/65R390TRX")]
    [InlineData("235-700 R 450 AC", "235-700R450AC", "235 - 700 R 450 AC 105H")]
    [InlineData("120/70ZR17 M/C (58W)", "120/70 R17 M/C", "120/70R17M/C 58V", "120/70 ZR17 58W MC")]
    [InlineData("295/80R22.5", "295/80 R 22,5 152/148M")]
    [InlineData("195R14C", "195 R14 C", "195R14 C 106/104R")]
    public void Two_spellings_of_one_size_are_one_size(params string[] spellings)
    {
        var first = Read(spellings[0]).Size;
        foreach (var spelling in spellings.Skip(1))
        {
            var size = Read(spelling).Size;
            size.Text.ShouldBe(first.Text, spelling);
            size.OverallDiameter.ShouldBe(first.OverallDiameter, spelling);
        }
    }

    [Theory]
    [InlineData("205/55 R16", "205/55 R16")]
    [InlineData("lt245/75r16", "LT245/75 R16")]
    [InlineData("130/90-16", "130/90-16 M/C")]
    [InlineData("11r22.5", "11 R22.5")]
    [InlineData("10.00r20", "10.00 R20")]
    [InlineData("6.95-14", "6.95-14")]
    [InlineData("31x10.50r15lt", "31x10.50 R15 LT")]
    [InlineData("mt90-16", "MT90-16")]
    [InlineData("hr78-15", "HR78-15")]
    public void One_spelling(string marking, string text) => Read(marking).Size.Text.ShouldBe(text);

    [Theory]
    [InlineData("205/55R16 91V", "195/55R16 91V")]
    [InlineData("205/55R16", "LT205/55R16")]
    [InlineData("205/55R16", "205/55R16C")]
    [InlineData("205/55D16", "205/55R16")]
    [InlineData("205/75-16", "205/75R16")]
    [InlineData("195R14", "195R14C")]
    [InlineData("E78-14", "F78-14")]
    [InlineData("E78-14", "ER78-14")]
    [InlineData("7.50-16LT", "7.50-16")]
    public void Different_sizes_are_different(string one, string other) => Read(one).Size.Text.ShouldNotBe(Read(other).Size.Text);

    [Fact]
    public void P_and_HL_change_the_load_and_not_the_dimensions()
    {
        Read("P205/55R16").Size.Text.ShouldNotBe(Read("205/55R16").Size.Text);
        Read("P205/55R16").Size.TextWithoutLoadPrefix.ShouldBe("205/55 R16");
        Read("HL245/40R19 101Y").Size.TextWithoutLoadPrefix.ShouldBe("245/40 R19");
        Read("LT245/75R16").Size.TextWithoutLoadPrefix.ShouldBe("LT245/75 R16");
    }

    [Theory]
    [InlineData("205/55R16 91V", TyreClass.Passenger)]
    [InlineData("P215/65R15XL 95H", TyreClass.Passenger)]
    [InlineData("HL245/40R19 101Y", TyreClass.Passenger)]
    [InlineData("7.00-15", TyreClass.Passenger)]
    [InlineData("H78-15", TyreClass.Passenger)]
    [InlineData("165R13 82T", TyreClass.Passenger)]
    [InlineData("190/65HR390 TRX", TyreClass.Passenger)]
    [InlineData("235-700 R 450 AC 105H", TyreClass.Passenger)]
    [InlineData("LT245/75R16 120/116S", TyreClass.LightTruck)]
    [InlineData("31x10.50R15LT", TyreClass.LightTruck)]
    [InlineData("7.50R16LT", TyreClass.LightTruck)]
    [InlineData("235/65R16C 121/119R", TyreClass.Commercial)]
    [InlineData("225/75R16CP 118R", TyreClass.Commercial)]
    [InlineData("195R14C 106/104R", TyreClass.Commercial)]
    [InlineData("195/75R16 107/105R", TyreClass.Commercial)]
    [InlineData("295/80R22.5 152/148M", TyreClass.Truck)]
    [InlineData("385/65R22.5 160J", TyreClass.Truck)]
    [InlineData("215/75R17.5", TyreClass.Truck)]
    [InlineData("11R22.5", TyreClass.Truck)]
    [InlineData("10.00R20 146/143K", TyreClass.Truck)]
    [InlineData("11-22.5", TyreClass.Truck)]
    [InlineData("365/80R20 152K", TyreClass.Truck)]
    [InlineData("T125/70D16 96M", TyreClass.TemporarySpare)]
    [InlineData("S145/80D18", TyreClass.TemporarySpare)]
    [InlineData("ST205/75R15 LRD", TyreClass.SpecialTrailer)]
    [InlineData("8-14.5MH", TyreClass.SpecialTrailer)]
    [InlineData("4.80-8 LRB", TyreClass.SpecialTrailer)]
    [InlineData("3.25-19 54P", TyreClass.Motorcycle)]
    [InlineData("MT90-16 74H", TyreClass.Motorcycle)]
    [InlineData("120/70ZR17 M/C (58W)", TyreClass.Motorcycle)]
    [InlineData("180/55ZR17 (73W)", TyreClass.Motorcycle)]
    [InlineData("80/100-21 51M", TyreClass.Motorcycle)]
    public void The_class_is_told_by_the_marking(string marking, TyreClass tyreClass) => Read(marking).Size.TyreClass.ShouldBe(tyreClass);

    [Theory]
    [InlineData("LT235/85R16C", "C")]
    [InlineData("LT235/85R16E 120/116R", "E")]
    [InlineData("LT235/85R16/E", "E")]
    [InlineData("LT235/85R16 LR E", "E")]
    [InlineData("LT235/85R16 LOAD RANGE D", "D")]
    [InlineData("235/85R16LT C", "C")]
    [InlineData("31x10.50R15LT C", "C")]
    [InlineData("ST205/75R15 D", "D")]
    [InlineData("H78-15 LRB", "B")]
    [InlineData("255/70R22.5/H", "H")]
    [InlineData("235/65R16C 121/119R", null)]
    [InlineData("195R14C", null)]
    [InlineData("205/55R16 91V", null)]
    public void Load_range(string marking, string? letter) => Read(marking).Service.LoadRange.ShouldBe(letter);

    [Theory]
    [InlineData("7.50-16LT 8PR", 8)]
    [InlineData("7.50-16LT LRD", 8)]
    [InlineData("195R14C 8 PR 106/104R", 8)]
    [InlineData("LT235/85R16E", 10)]
    [InlineData("205/55R16 91V", null)]
    public void Ply_rating(string marking, int? plies) => Read(marking).Service.PlyRating.ShouldBe(plies);

    [Fact]
    public void RF_in_the_size_is_run_flat_and_behind_it_reinforced()
    {
        var runFlat = Read("225/45RF17 91W");
        runFlat.Size.RunFlat.ShouldBeTrue();
        runFlat.Service.ExtraLoad.ShouldBeFalse();
        foreach (var marking in new[] { "225/45R17 94W RF", "225/45R17RF 94W", "225/45R17 94W REINFORCED", "225/45R17 94W XL", "225/45R17XL 94W", "225/45 R17 EXTRA LOAD 94W", "225/45R17 RF 94W" })
        {
            var reinforced = Read(marking);
            reinforced.Size.RunFlat.ShouldBeFalse(marking);
            reinforced.Service.ExtraLoad.ShouldBeTrue(marking);
            reinforced.Service.LoadIndexSingle.ShouldBe(94, marking);
        }

        var both = Read("225/45ZRF17 94Y RF");
        both.Size.RunFlat.ShouldBeTrue();
        both.Size.AboveTwoHundredForty.ShouldBeTrue();
        both.Service.ExtraLoad.ShouldBeTrue();
    }

    [Fact]
    public void A_service_description_tells_load_and_speed()
    {
        var service = Read("LT245/75R16 120/116S").Service;
        service.LoadSingle!.Value.Kilograms.ShouldBe(1400, 1e-9);
        service.LoadDual!.Value.Kilograms.ShouldBe(1250, 1e-9);
        service.Speed!.Value.KilometresPerHour.ShouldBe(180, 1e-9);
        service.SpeedSymbol.ShouldBe("S");
    }

    [Fact]
    public void What_the_marking_does_not_tell_is_null()
    {
        var service = Read("205/55R16").Service;
        service.LoadIndexSingle.ShouldBeNull();
        service.LoadSingle.ShouldBeNull();
        service.SpeedSymbol.ShouldBeNull();
        service.Speed.ShouldBeNull();
        var bare = Read("7.00-15").Size;
        bare.AspectRatioPercent.ShouldBeNull();
        bare.OverallDiameter.ShouldBeNull();
        bare.DesignSectionWidth.ShouldBeNull();
        Read("E78-14").Size.SectionWidth.ShouldBeNull();
        Read("E78-14").Size.OverallDiameter.ShouldBeNull();
    }

    [Theory]
    [InlineData("185/70HR14", "H", 210, false)]
    [InlineData("185/70SR14", "S", 180, false)]
    [InlineData("220/55VR390", "V", 210, true)]
    [InlineData("275/35ZR20 (102Y)", "Y", 300, true)]
    [InlineData("275/35ZR20 102(Y)", "Y", 300, true)]
    [InlineData("225/45ZR17 94W", "W", 270, false)]
    [InlineData("120/70ZR17 M/C (58W)", "W", 270, true)]
    public void Speeds_inside_and_behind_the_size(string marking, string symbol, double kilometresPerHour, bool above)
    {
        var service = Read(marking).Service;
        service.SpeedSymbol.ShouldBe(symbol);
        service.Speed!.Value.KilometresPerHour.ShouldBe(kilometresPerHour, 1e-9);
        service.AboveSymbol.ShouldBe(above);
    }

    [Theory]
    [InlineData("205/55ZR16", "ask the tyre's maker")]
    [InlineData("275/35ZR20 (102Y)", "above 300 km/h")]
    [InlineData("185/70HR14 88T", "The size says H and the service description says T")]
    [InlineData("225/45ZR17 91H", "contradicts the speed symbol H")]
    [InlineData("190/65HR390 TRX", "never goes on an inch rim")]
    [InlineData("235-700 R 450 AC 105H", "only on the wheel made for it")]
    [InlineData("8-14.5MH", "never interchangeable with 14 or 15")]
    [InlineData("7.00-15", "read the construction on the sidewall")]
    [InlineData("T125/70D16 96M", "80 km/h")]
    [InlineData("ST205/75R15 LRD", "65 mph")]
    [InlineData("205/55R16 91V NHS", "may not be used on the road")]
    [InlineData("205/55R16 RACING ONLY", "may not be used on the road")]
    [InlineData("165R13 82T", "nominal 82")]
    [InlineData("195R14C 106/104R", "up to 11 mm too great")]
    [InlineData("LT245/75R16 116/120S", "above that of a single tyre")]
    [InlineData("203/55R16 91V", "steps of 5 mm")]
    [InlineData("225/45RF17 91W", "pressure monitor")]
    [InlineData("E78-14", "1400 lb")]
    [InlineData("205/55R16H", "is read as a load range")]
    [InlineData("P195/75R14 91S", "MAX LOAD")]
    [InlineData("180/55ZR17 (73W)", "M/C is not marked")]
    [InlineData("225/75R16C 121/120R 118S", "Two service descriptions")]
    public void Cautions(string marking, string says) => Read(marking).Cautions.ShouldContain(c => c.Contains(says, StringComparison.Ordinal));

    [Fact]
    public void A_listed_size_without_aspect_ratio_has_its_listed_diameter()
    {
        Read("165R13 82T").Size.OverallDiameter!.Value.Millimetres.ShouldBe(596, 1e-9);
        Read("165R13 82T").Cautions.ShouldNotContain(c => c.Contains("too great", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("205/55R16 91V")]
    [InlineData("205/55 R16 94V XL M+S 3PMSF")]
    [InlineData("275/35ZR20 102Y XL")]
    [InlineData("195/65 R15 91H TL")]
    public void An_ordinary_marking_has_no_caution(string marking) => Read(marking).Cautions.ShouldBeEmpty();

    [Fact]
    public void Both_service_descriptions_are_kept()
    {
        var marking = Read("225/75R16C 121/120R 118S");
        marking.Service.LoadIndexSingle.ShouldBe(121);
        marking.Service.LoadIndexDual.ShouldBe(120);
        marking.Service.SpeedSymbol.ShouldBe("R");
        marking.AdditionalService!.LoadIndexSingle.ShouldBe(118);
        marking.AdditionalService.SpeedSymbol.ShouldBe("S");
    }

    [Fact]
    public void Words_are_told_in_one_spelling_each_once() =>
        Read("205/55R16 91V m&s M+S 3pmsf tubeless").Words.ShouldBe(["M+S", "3PMSF", "TL"]);

    [Theory]
    [InlineData("7.00-15 BIAS-BELTED", Construction.BiasBelted)]
    [InlineData("7.00-15 DIAGONAL", Construction.Diagonal)]
    [InlineData("155B13", Construction.BiasBelted)]
    [InlineData("T125/70D16", Construction.Diagonal)]
    public void A_word_or_letter_settles_the_construction(string marking, Construction construction)
    {
        Read(marking).Size.Construction.ShouldBe(construction);
        Read(marking).Size.ConstructionToBeRead.ShouldBeFalse();
    }

    [Fact]
    public void Extended_mobility_marks_its_diameter_and_millimetre_rims_follow_the_rule()
    {
        var mobility = Read("235-700 R 450 AC 105H").Size;
        mobility.OverallDiameter!.Value.Millimetres.ShouldBe(700, 1e-9);
        mobility.RimDiameterMillimetres.ShouldBe(450);
        mobility.RimDiameterInches.ShouldBeNull();

        // 390 + 2 × 124 (190 × 0.65 = 123.5, halves up).
        var metric = Read("190/65HR390 TRX").Size;
        metric.OverallDiameter!.Value.Millimetres.ShouldBe(638, 1e-9);
        metric.DesignSectionWidth.ShouldBeNull();
    }

    private static Marking Read(string marking)
    {
        var read = MarkingReader.Read(marking);
        read.IsRead.ShouldBeTrue($"{marking}: {read.Problem?.Message}");
        return read.Value;
    }
}
