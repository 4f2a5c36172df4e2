using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Makes service descriptions of what was scanned behind a size.</summary>
internal static class ServiceReader
{
    /// <summary>The first service description; without one, what the size itself tells (185/70 HR14).</summary>
    public static ServiceDescription First(SizeDesignation size, ServiceScan scan)
    {
        var described = scan.Services.Count > 0 ? Of(scan.Services[0]) : Embedded(size);
        return described with
        {
            LoadRange = scan.LoadRange,
            PlyRating = scan.PlyRating ?? (scan.LoadRange is { } letter ? LoadRanges.PlyRating(letter) : null),
            ExtraLoad = scan.Words.Any(w => w is "XL" or "REINFORCED"),
            HighLoad = size.Prefix == "HL",
        };
    }

    /// <summary>The additional service description, or null.</summary>
    public static ServiceDescription? Second(SizeDesignation size, ServiceScan scan) =>
        scan.Services.Count < 2 ? null : Of(scan.Services[1]) with { HighLoad = size.Prefix == "HL" };

    private static ServiceDescription Of(ScannedService scanned) => new()
    {
        LoadIndexSingle = scanned.Single,
        LoadIndexDual = scanned.Dual,
        SpeedSymbol = scanned.Symbol,
        AboveSymbol = scanned.Bracketed && MarkingCautions.BracketMeansAbove(scanned.Symbol),
        LoadSingle = LoadIndex.LoadOf(scanned.Single),
        LoadDual = scanned.Dual is { } dual ? LoadIndex.LoadOf(dual) : null,
        Speed = SpeedSymbols.Of(scanned.Symbol)?.Speed,
    };

    /// <summary>The speed letter of an old size. VR meant above 210 km/h, before V had a service description; ZR alone tells no speed.</summary>
    private static ServiceDescription Embedded(SizeDesignation size)
    {
        if (size.EmbeddedSpeedSymbol is not { } letter)
        {
            return new ServiceDescription();
        }

        var row = SpeedSymbols.Of(letter == "V" ? "VR" : letter)!;
        return new ServiceDescription { SpeedSymbol = letter, Speed = row.Speed, AboveSymbol = row.Above };
    }
}
