using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>What a person should know about a reading: contradictions, hard stops, what only the maker can say.</summary>
internal static class MarkingCautions
{
    /// <summary>Brackets around a symbol of V or faster mean 'above that speed'.</summary>
    public static bool BracketMeansAbove(string symbol) => symbol is "V" or "W" or "Y";

    public static IEnumerable<string> Of(SizeDesignation size, ServiceDescription service, ServiceDescription? additional, ServiceScan scan) =>
        OfSize(size, scan).Concat(OfSpeed(size, service, scan)).Concat(OfLoad(size, service, scan)).Concat(OfUse(size, service, additional, scan));

    private static IEnumerable<string> OfSize(SizeDesignation size, ServiceScan scan)
    {
        if (size.ConstructionToBeRead)
        {
            yield return "'-' leaves open whether the tyre is diagonal or bias-belted: read the construction on the sidewall.";
        }
        else if (size.Construction == Construction.Diagonal && scan.Words.Contains("RADIAL"))
        {
            yield return "RADIAL contradicts the construction in the size: read both again.";
        }

        if (size.RimDiameterMillimetres is { } rim)
        {
            yield return size.Family == MarkingFamily.ExtendedMobility
                ? "The beads are of their own kind: this tyre goes only on the wheel made for it. Stop if the wheel is any other."
                : $"The rim is measured in millimetres ({Quantity.Number(rim, 0)} mm): this tyre never goes on an inch rim, nor an inch tyre on its rim. Stop if the wheel is any other.";
        }

        if (size.RimDiameterInches is { } code && code != Math.Floor(code))
        {
            yield return $"The rim code {Quantity.Number(code, 1)} is never interchangeable with {Quantity.Number(Math.Floor(code), 0)} or {Quantity.Number(Math.Ceiling(code), 0)}: a tyre that looks as if it nearly fits can burst when it is inflated.";
        }

        if (!size.AspectRatioMarked)
        {
            yield return $"No aspect ratio is marked; the nominal {Quantity.Number(size.AspectRatioPercent!.Value, 0)} is taken.";
            if (SizeTable.Of(size) is not { Overrides: true })
            {
                yield return $"No table lists this size: its diameter by the nominal aspect ratio can be up to {Figures.Of("sidewall.nominal-aspect-excess").Limit(0).Amount.Text} too great. Measure it.";
            }
        }

        if (size.Family is MarkingFamily.Metric or MarkingFamily.MetricWithoutAspect && size.TyreClass != TyreClass.Motorcycle
            && size.SectionWidth is { } width && Math.Round(width.Millimetres) % 5 != 0)
        {
            yield return "Section widths normally go in steps of 5 mm: read the width again.";
        }

        if (size.TyreClass == TyreClass.Motorcycle && !scan.Words.Contains("M/C") && size.Family != MarkingFamily.MotorcycleLetter)
        {
            yield return "Taken for a motorcycle tyre by its size alone, since M/C is not marked.";
        }

        if (size.RunFlat)
        {
            yield return "Built to run flat (RF in the size): it needs a pressure monitor and a rim of the kind that the vehicle's maker names.";
        }
    }

    private static IEnumerable<string> OfSpeed(SizeDesignation size, ServiceDescription service, ServiceScan scan)
    {
        if (scan.Services.Count > 0 && size.EmbeddedSpeedSymbol is { } letter && letter != service.SpeedSymbol)
        {
            yield return $"The size says {letter} and the service description says {service.SpeedSymbol}: the service description is taken. Read both again.";
        }

        if (size.AboveTwoHundredForty && scan.Services.Count == 0)
        {
            yield return "ZR without a service description means above 240 km/h: ask the tyre's maker for load and speed.";
        }

        if (size.AboveTwoHundredForty && scan.Services.Count > 0 && !BracketMeansAbove(service.SpeedSymbol!))
        {
            yield return $"ZR means above 240 km/h, which contradicts the speed symbol {service.SpeedSymbol}: the speed symbol is taken. Read both again.";
        }

        if (size.EmbeddedSpeedSymbol == "V" && scan.Services.Count == 0)
        {
            yield return "VR in the size means above 210 km/h; how far above, and with what load, only the tyre's maker can say.";
        }

        if (service.AboveSymbol && scan.Services.Count > 0)
        {
            yield return $"The symbol {service.SpeedSymbol} in brackets means above {Quantity.Number(service.Speed!.Value.KilometresPerHour, 0)} km/h: ask the tyre's maker for the speed and for the load at that speed.";
        }

        if (scan.Services.Any(s => s.Bracketed && !BracketMeansAbove(s.Symbol)) && scan.Services.Count == 1)
        {
            yield return $"Brackets around the speed symbol {service.SpeedSymbol} have no known meaning; it is read without them.";
        }
    }

    private static IEnumerable<string> OfLoad(SizeDesignation size, ServiceDescription service, ServiceScan scan)
    {
        if (service.LoadIndexDual > service.LoadIndexSingle)
        {
            yield return $"The load index of a dual pair ({service.LoadIndexDual}) is above that of a single tyre ({service.LoadIndexSingle}): read both again.";
        }

        if (scan.LoadRangeByLetter)
        {
            yield return $"The letter {service.LoadRange} directly behind the rim is read as a load range; a speed symbol stands behind a load index.";
        }

        if (size.Prefix == "P" && service.LoadIndexSingle is not null)
        {
            yield return "On a P size the MAX LOAD on the sidewall counts, which can be a little below the load index.";
        }

        if (size.Family == MarkingFamily.Alphanumeric && LoadRanges.AlphanumericLoad(size.Letters) is { } load)
        {
            yield return $"The letter {size.Letters} stands for {Quantity.Text(load, "kg", 0)} ({Quantity.Text(load, "lb", 0)}) at 32 psi in load range B (from memory, not checked against the text): MAX LOAD on the sidewall counts.";
        }
    }

    private static IEnumerable<string> OfUse(SizeDesignation size, ServiceDescription service, ServiceDescription? additional, ServiceScan scan)
    {
        if (additional is not null)
        {
            yield return "Two service descriptions are marked: each load holds at its own speed.";
        }

        if (size.TyreClass == TyreClass.TemporarySpare)
        {
            var limit = Figures.Of("sidewall.temporary-spare-speed");
            yield return $"Temporary use only: at most {Quantity.Number(limit.Value, 0)} {limit.Unit} unless the sidewall says more. Source: {limit.Source.ForPeople}.";
        }

        if (size.Prefix == "ST" && service.SpeedSymbol is null)
        {
            var limit = Figures.Of("sidewall.special-trailer-speed");
            yield return $"No speed symbol is marked: at most {Quantity.Number(limit.Value, 0)} {limit.Unit}. Source: {limit.Source.ForPeople}.";
        }

        if (size.Prefix == "ST" && !scan.Words.Contains("ST"))
        {
            yield return SidewallWords.Of("ST")!.Caution!;
        }

        foreach (var word in scan.Words)
        {
            if (SidewallWords.Of(word)?.Caution is { } caution)
            {
                yield return caution;
            }
        }
    }
}
