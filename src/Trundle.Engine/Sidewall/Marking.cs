using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>How the carcass is built.</summary>
public enum Construction
{
    /// <summary>Radial ply.</summary>
    Radial,

    /// <summary>Diagonal (bias) ply.</summary>
    Diagonal,

    /// <summary>Bias-belted.</summary>
    BiasBelted,
}

/// <summary>What kind of vehicle a tyre is made for, as its marking tells.</summary>
public enum TyreClass
{
    /// <summary>Passenger car.</summary>
    Passenger,

    /// <summary>Light truck (LT-metric, flotation, numeric LT).</summary>
    LightTruck,

    /// <summary>Commercial van (C, CP).</summary>
    Commercial,

    /// <summary>Truck or bus.</summary>
    Truck,

    /// <summary>Temporary-use spare.</summary>
    TemporarySpare,

    /// <summary>Special trailer service.</summary>
    SpecialTrailer,

    /// <summary>Motorcycle.</summary>
    Motorcycle,
}

/// <summary>The family of forms that a size designation belongs to (reference: tyre marking grammar).</summary>
public enum MarkingFamily
{
    /// <summary>205/55 R16, with any prefix.</summary>
    Metric,

    /// <summary>165 R13: no aspect ratio marked.</summary>
    MetricWithoutAspect,

    /// <summary>190/65 HR 390: rim in millimetres.</summary>
    MillimetreRim,

    /// <summary>235-700 R 450 AC: beads of their own kind.</summary>
    ExtendedMobility,

    /// <summary>31x10.50 R15 LT.</summary>
    Flotation,

    /// <summary>H78-15: the letter is the load class.</summary>
    Alphanumeric,

    /// <summary>7.50 R16 LT, 11 R22.5.</summary>
    Inch,

    /// <summary>MT90-16.</summary>
    MotorcycleLetter,
}

/// <summary>The size part of a marking. Every part that the marking does not tell is null.</summary>
public sealed record SizeDesignation
{
    /// <summary>The family of its form.</summary>
    public required MarkingFamily Family { get; init; }

    /// <summary>The class of vehicle.</summary>
    public required TyreClass TyreClass { get; init; }

    /// <summary>P, LT, ST, T, HL, or empty.</summary>
    public string Prefix { get; init; } = "";

    /// <summary>The nominal section width, as marked.</summary>
    public Length? SectionWidth { get; init; }

    /// <summary>The design section width on the measuring rim, by the rule or the table.</summary>
    public Length? DesignSectionWidth { get; init; }

    /// <summary>The measuring rim's width, by the table or the rule.</summary>
    public Length? MeasuringRimWidth { get; init; }

    /// <summary>Nominal aspect ratio in per cent; 82 where a metric size marks none.</summary>
    public double? AspectRatioPercent { get; init; }

    /// <summary>False where the aspect ratio is the nominal one of a size that marks none.</summary>
    public bool AspectRatioMarked { get; init; } = true;

    /// <summary>How the carcass is built; see <see cref="ConstructionToBeRead"/>.</summary>
    public required Construction Construction { get; init; }

    /// <summary>True where '-' leaves diagonal or bias-belted open; then <see cref="Construction"/> is diagonal.</summary>
    public bool ConstructionToBeRead { get; init; }

    /// <summary>The rim's diameter code in inches, or null for millimetre rims.</summary>
    public double? RimDiameterInches { get; init; }

    /// <summary>The rim's nominal diameter in millimetres where it is marked so (TRX, TD, extended mobility); such a rim never takes an inch tyre.</summary>
    public double? RimDiameterMillimetres { get; init; }

    /// <summary>The design overall diameter, by the table, the rule or the marking.</summary>
    public Length? OverallDiameter { get; init; }

    /// <summary>Where the design dimensions come from: the table that lists the size, or the rule; null where no dimension is known.</summary>
    public Source? DimensionSource { get; init; }

    /// <summary>RF in the size in place of R: built to run flat.</summary>
    public bool RunFlat { get; init; }

    /// <summary>ZR or ZRF in the size: above 240 km/h.</summary>
    public bool AboveTwoHundredForty { get; init; }

    /// <summary>The speed letter inside the size (185/70 HR14), or null.</summary>
    public string? EmbeddedSpeedSymbol { get; init; }

    /// <summary>C, CP, LT, MH, XL … directly behind the rim code, or empty.</summary>
    public string Suffix { get; init; } = "";

    /// <summary>The load letter of an alphanumeric size (H of H78-15), the width letters of a motorcycle size (MT of MT90-16), TRX, TD, A, AC or U of a rim system; or empty.</summary>
    public string Letters { get; init; } = "";

    /// <summary>The size alone, in one spelling: "205/55 R16". Two tyres are of one size where this is equal.</summary>
    public required string Text { get; init; }

    /// <summary>The same spelling without P and HL, which change the load but not the dimensions: P205/55 R16 and 205/55 R16 fit one rim and stand equally high.</summary>
    public string TextWithoutLoadPrefix => Prefix is "P" or "HL" ? Text[Prefix.Length..] : Text;
}

/// <summary>What a tyre is made to carry and how fast.</summary>
public sealed record ServiceDescription
{
    /// <summary>Load index of a single tyre.</summary>
    public int? LoadIndexSingle { get; init; }

    /// <summary>Load index in a dual pair.</summary>
    public int? LoadIndexDual { get; init; }

    /// <summary>Speed symbol, or null.</summary>
    public string? SpeedSymbol { get; init; }

    /// <summary>The top speed lies above <see cref="Speed"/> and only the maker can say it: the symbol stands in brackets, as in (102Y), or is the V of an old VR size.</summary>
    public bool AboveSymbol { get; init; }

    /// <summary>Load of a single tyre.</summary>
    public Mass? LoadSingle { get; init; }

    /// <summary>Load of each tyre in a dual pair.</summary>
    public Mass? LoadDual { get; init; }

    /// <summary>Top speed.</summary>
    public Speed? Speed { get; init; }

    /// <summary>Load range letter B, C, D, E …, or null.</summary>
    public string? LoadRange { get; init; }

    /// <summary>Ply rating, as marked (8PR) or by the load range; or null.</summary>
    public int? PlyRating { get; init; }

    /// <summary>XL, EXTRA LOAD, REINFORCED or RF behind the size.</summary>
    public bool ExtraLoad { get; init; }

    /// <summary>HL before the size.</summary>
    public bool HighLoad { get; init; }

    /// <summary>
    /// The load that this tyre can at most be made for at a place. In a dual pair it is never above that of a single tyre, so a tyre without a
    /// dual load index may carry less than this there, never more: what exceeds it is too much for certain.
    /// </summary>
    /// <source>TRA light-truck tables: a tyre in a dual pair carries about 0.91 of its single load (second-hand); common practice</source>
    public Mass? LoadAtMost(bool dual) => dual && LoadDual is { } pair && !(LoadSingle < pair) ? pair : LoadSingle;

    /// <summary>The load index that this tyre can at most have at a place; as <see cref="LoadAtMost"/>.</summary>
    /// <source>as LoadAtMost</source>
    public int? LoadIndexAtMost(bool dual) => dual && LoadIndexDual is { } pair && !(LoadIndexSingle < pair) ? pair : LoadIndexSingle;
}

/// <summary>A whole marking: size, service description, and the other words of the sidewall line.</summary>
public sealed record Marking
{
    /// <summary>As typed.</summary>
    public required string Typed { get; init; }

    /// <summary>The size designation.</summary>
    public required SizeDesignation Size { get; init; }

    /// <summary>The service description; empty where none was marked.</summary>
    public required ServiceDescription Service { get; init; }

    /// <summary>A second service description, where one is marked; both hold, each at its own speed.</summary>
    public ServiceDescription? AdditionalService { get; init; }

    /// <summary>Further words in upper case: M+S, 3PMSF, TL, NHS, M/C …</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>What a person should know about this reading: contradictions, hard stops, what only the maker can say.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}
