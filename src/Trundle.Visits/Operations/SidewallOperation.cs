using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>What a sidewall says: size, service description, words, and the TIN with its age.</summary>
public static class SidewallOperation
{
    /// <summary>The operation <c>sidewall</c>.</summary>
    public static Operation Operation { get; } = new("sidewall", "Read a marking such as \"205/55 R16 91V\", and a TIN.", Run)
    {
        ArgumentKey = "marking",
        Options =
        [
            new OperationOption("--tin", "tin", "The tyre identification number, for example \"DOT 1AB CDEFHJ 2218\"."),
            new OperationOption("--on", "on", "Today's date for the age, for example 2026-03-14."),
        ],
    };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var o = new FileObject(body, problems);
        var marking = o.Require("marking", "give what the sidewall says, for example 205/55 R16 91V") ? o.Reference("marking", MarkingReader.Read) : null;

        // An empty TIN or date is a wrong one, not none: somebody meant to give it.
        foreach (var key in new[] { "tin", "on" })
        {
            if (o.Node(key) is not null && !o.Has(key))
            {
                o.Wrong(key, "empty", $"'{key}' is empty; give it or leave it out.");
            }
        }

        var on = o.Date("on");
        var tin = o.Reference("tin", text => TinReader.Read(text, on));
        o.Done();
        if (problems.Count > 0 || marking is null)
        {
            return AnswerJson.Wrong(problems);
        }

        var json = new JsonObject
        {
            ["marking"] = marking.Typed,
            ["size"] = SizeJson(marking.Size),
            ["service"] = ServiceJson(marking.Service),
            ["additionalService"] = marking.AdditionalService is { } additional ? ServiceJson(additional) : null,
            ["words"] = AnswerJson.List(marking.Words.Select(word => (JsonNode?)WordJson(word))),
            ["tin"] = tin is null ? null : TinJson(tin, on),
            ["cautions"] = AnswerJson.List(Cautions(marking, tin, on)),
        };
        return Reading<Answer>.Of(new Answer(false, json, [.. Lines(marking, tin, on)]));
    }

    private static JsonObject SizeJson(SizeDesignation size) => new()
    {
        ["text"] = size.Text,
        ["family"] = FamilyWord(size.Family),
        ["tyreClass"] = ClassWord(size.TyreClass),
        ["sectionWidthMillimetres"] = size.SectionWidth?.Millimetres,
        ["designSectionWidthMillimetres"] = size.DesignSectionWidth?.Millimetres,
        ["measuringRimWidthInches"] = size.MeasuringRimWidth?.Inches,
        ["aspectRatioPercent"] = size.AspectRatioPercent,
        ["aspectRatioMarked"] = size.AspectRatioPercent is null ? null : size.AspectRatioMarked,
        ["construction"] = ConstructionWord(size.Construction),
        ["constructionToBeRead"] = size.ConstructionToBeRead,
        ["rimDiameterInches"] = size.RimDiameterInches,
        ["rimDiameterMillimetres"] = size.RimDiameterMillimetres,
        ["overallDiameterMillimetres"] = size.OverallDiameter?.Millimetres,
        ["dimensionSource"] = size.DimensionSource?.Text,
        ["dimensionStatus"] = size.DimensionSource?.StatusText,
        ["runFlat"] = size.RunFlat,
        ["rimWidths"] = RimJson(RimRanges.For(size)),
    };

    private static JsonObject? RimJson(RimRange? range) => range is null ? null : new JsonObject
    {
        ["leastInches"] = range.Least.Inches,
        ["mostInches"] = range.Most.Inches,
        ["measuringInches"] = range.Measuring.Inches,
        ["note"] = range.Note.Length == 0 ? null : range.Note,
        ["source"] = range.Source.Text,
        ["status"] = range.Source.StatusText,
    };

    private static JsonObject ServiceJson(ServiceDescription service) => new()
    {
        ["loadIndexSingle"] = service.LoadIndexSingle,
        ["loadIndexDual"] = service.LoadIndexDual,
        ["speedSymbol"] = service.SpeedSymbol,
        ["loadSingleKilograms"] = service.LoadSingle?.Kilograms,
        ["loadDualKilograms"] = service.LoadDual?.Kilograms,
        ["speedKilometresPerHour"] = service.Speed?.KilometresPerHour,
        ["aboveSpeed"] = service.AboveSymbol,
        ["loadRange"] = service.LoadRange,
        ["plyRating"] = service.PlyRating,
        ["extraLoad"] = service.ExtraLoad,
        ["highLoad"] = service.HighLoad,
        ["loadSource"] = service.LoadIndexSingle is { } index ? LoadIndex.SourceOf(index)?.Text : null,
        ["loadStatus"] = service.LoadIndexSingle is { } i ? LoadIndex.SourceOf(i)?.StatusText : null,
    };

    private static JsonObject WordJson(string word)
    {
        var row = SidewallWords.Of(word)!;
        return new JsonObject { ["word"] = word, ["meaning"] = row.Meaning, ["source"] = row.Source.Text, ["status"] = row.Source.StatusText };
    }

    private static JsonObject TinJson(Tin tin, DateOnly? on)
    {
        var age = on is { } day ? tin.AgeOn(day) : null;
        return new JsonObject
        {
            ["form"] = FormWord(tin.Form),
            ["symbols"] = tin.Symbols,
            ["plant"] = tin.Plant,
            ["makerCode"] = tin.MakerCode,
            ["week"] = tin.Week,
            ["year"] = tin.Year,
            ["ageYears"] = age?.Years,
            ["ageYearsLeast"] = age?.LeastYears,
            ["ageYearsMost"] = age?.MostYears,
            ["ambiguousDecade"] = tin.AmbiguousDecade,
            ["candidateYears"] = new JsonArray([.. tin.CandidateYears.Select(y => (JsonNode?)JsonValue.Create(y))]),
            ["retread"] = tin.Form == TinForm.Retread,
            ["cautions"] = AnswerJson.List(tin.Cautions),
        };
    }

    private static IEnumerable<string> Cautions(Marking marking, Tin? tin, DateOnly? on)
    {
        foreach (var caution in marking.Cautions.Concat(tin?.Cautions ?? []))
        {
            yield return caution;
        }

        if (marking.Service.LoadIndexSingle is null || marking.Service.SpeedSymbol is null)
        {
            var missing = marking.Service.LoadIndexSingle is not null ? "speed symbol" : marking.Service.SpeedSymbol is not null ? "load index" : "load index and no speed symbol";
            yield return $"No {missing} in what was read, so what belongs to it is not known (null is not zero): read the whole marking with its service description on the tyre, or ask its maker.";
        }

        if (tin?.Week is not null && on is null)
        {
            yield return "No date was given, so no age is told and a date in the future is not noticed: give --on with today's date.";
        }
    }

    private static IEnumerable<string> Lines(Marking marking, Tin? tin, DateOnly? on)
    {
        var size = marking.Size;
        yield return $"Size               {size.Text}, {ClassWord(size.TyreClass)}, {(size.ConstructionToBeRead ? "diagonal or bias-belted (to be read)" : ConstructionWord(size.Construction))}";
        yield return $"Section width      {(size.SectionWidth is null ? "not marked" : $"{Shown(size.SectionWidth)} as marked")}, {(size.DesignSectionWidth is null ? "design width not known" : $"{Shown(size.DesignSectionWidth)} by design")}{(size.MeasuringRimWidth is { } rim ? $" on a rim of {Quantity.Text(rim, "in", 1)}" : "")}";
        yield return $"Aspect ratio       {(size.AspectRatioPercent is { } aspect ? $"{Quantity.Number(aspect, 0)} %{(size.AspectRatioMarked ? "" : " (nominal, not marked)")}" : "not marked")}";
        yield return $"Rim                {(size.RimDiameterInches is { } code ? $"{Quantity.Number(code, code == Math.Floor(code) ? 0 : 1)} in" : $"{Quantity.Number(size.RimDiameterMillimetres ?? 0, 0)} mm")}";
        yield return $"Overall diameter   {Shown(size.OverallDiameter)}{(size.DimensionSource is { } source ? $" [{source.ForPeople}]" : "")}";
        foreach (var service in new[] { marking.Service, marking.AdditionalService }.OfType<ServiceDescription>())
        {
            yield return $"Load               {Load(service.LoadIndexSingle, service.LoadSingle)}{(service.LoadIndexDual is null ? "" : $", in a dual pair {Load(service.LoadIndexDual, service.LoadDual)}")}{(service.ExtraLoad ? ", extra load" : "")}{(service.HighLoad ? ", high load" : "")}";
            yield return $"Speed              {(service.Speed is { } speed ? $"{service.SpeedSymbol}: {(service.AboveSymbol ? "above " : "")}{Quantity.Text(speed, "km/h", 0)}" : "not told")}";
        }

        if (marking.Service.LoadRange is { } range)
        {
            yield return $"Load range         {range}{(marking.Service.PlyRating is { } ply ? $" ({ply.ToString(CultureInfo.InvariantCulture)} ply rating, from memory)" : "")}";
        }

        foreach (var word in marking.Words)
        {
            yield return $"{word,-18} {SidewallWords.Of(word)!.Meaning} [{SidewallWords.Of(word)!.Source.ForPeople}]";
        }

        if (tin is not null)
        {
            yield return $"TIN                {(tin.Plant is null ? "" : $"plant {tin.Plant}, ")}{(tin.Week is { } week ? $"week {week.ToString(CultureInfo.InvariantCulture)} of {string.Join(" or ", tin.CandidateYears)}" : "no date")}";
            if (on is { } day && tin.AgeOn(day) is { } age)
            {
                yield return $"Age                {(age.Years is { } years ? $"{Quantity.Number(years, 1)} years, give or take a week" : $"{Quantity.Number(age.LeastYears, 1)} to {Quantity.Number(age.MostYears, 1)} years")}";
            }
        }

        foreach (var caution in Cautions(marking, tin, on))
        {
            yield return $"Caution: {caution}";
        }
    }

    private static string Shown(Length? length) => length is { } l ? Quantity.Text(l, "mm", 0) : "not known";

    private static string Load(int? index, Mass? load) => index is { } i && load is { } l ? $"{i.ToString(CultureInfo.InvariantCulture)}: {Quantity.Text(l, "kg", l.Kilograms == Math.Floor(l.Kilograms) ? 0 : 1)}" : "not told";

    /// <summary>The contract's word for a construction.</summary>
    public static string ConstructionWord(Construction construction) => construction switch
    {
        Construction.Radial => "radial",
        Construction.Diagonal => "diagonal",
        Construction.BiasBelted => "bias-belted",
    };

    /// <summary>The contract's word for a tyre class.</summary>
    public static string ClassWord(TyreClass tyreClass) => tyreClass switch
    {
        TyreClass.Passenger => "passenger",
        TyreClass.LightTruck => "light-truck",
        TyreClass.Commercial => "commercial",
        TyreClass.Truck => "truck",
        TyreClass.TemporarySpare => "temporary-spare",
        TyreClass.SpecialTrailer => "special-trailer",
        TyreClass.Motorcycle => "motorcycle",
    };

    private static string FamilyWord(MarkingFamily family) => family switch
    {
        MarkingFamily.Metric => "metric",
        MarkingFamily.MetricWithoutAspect => "metric-without-aspect",
        MarkingFamily.MillimetreRim => "millimetre-rim",
        MarkingFamily.ExtendedMobility => "extended-mobility",
        MarkingFamily.Flotation => "flotation",
        MarkingFamily.Alphanumeric => "alphanumeric",
        MarkingFamily.Inch => "inch",
        MarkingFamily.MotorcycleLetter => "motorcycle-letter",
    };

    private static string FormWord(TinForm form) => form switch
    {
        TinForm.ThirteenSymbols => "thirteen-symbols",
        TinForm.FourDigitDate => "four-digit-date",
        TinForm.ThreeDigitDate => "three-digit-date",
        TinForm.Retread => "retread",
        TinForm.Partial => "partial",
        TinForm.DateOnly => "date-only",
    };
}
