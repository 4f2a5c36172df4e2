using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>What was measured.</summary>
public enum RunoutPart
{
    /// <summary>Tyre and wheel as mounted, on the tread or the sidewall.</summary>
    Assembly,

    /// <summary>The tyre's share.</summary>
    Tyre,

    /// <summary>The wheel, at its bead seats or flanges.</summary>
    Wheel,
}

/// <summary>Which way the dial looks.</summary>
public enum RunoutDirection
{
    /// <summary>Towards the axis.</summary>
    Radial,

    /// <summary>Along the axis.</summary>
    Lateral,
}

/// <summary>Where the part turned while it was measured.</summary>
public enum RunoutMounting
{
    /// <summary>On the vehicle's own hub.</summary>
    OnVehicle,

    /// <summary>On a balancer's shaft or another fixture.</summary>
    OffVehicle,
}

/// <summary>A limit that was looked at.</summary>
/// <param name="What">What it is for.</param>
/// <param name="Limit">The limit with its source.</param>
public sealed record ConsideredRunoutLimit(string What, Limit Limit);

/// <summary>A measured runout held against its limit.</summary>
/// <param name="Ruling">The maker's own limit; else the lowest published one; else null.</param>
/// <param name="WithinLimit">Null where there is no limit, where published ones disagree about this runout, or where the places cannot tell it.</param>
/// <param name="Considered">Every limit that was looked at.</param>
/// <param name="Cautions">What stands beside the verdict.</param>
public sealed record RunoutVerdict(Limit? Ruling, bool? WithinLimit, IReadOnlyList<ConsideredRunoutLimit> Considered, IReadOnlyList<string> Cautions)
{
    /// <summary>The answer is 'no', or a person must decide: above the lowest known limit.</summary>
    public bool MustBeLookedAt { get; init; }
}

/// <summary>Limits of runout: the maker's own, else the published examples.</summary>
public static class RunoutLimits
{
    private static readonly CsvTable Table = CsvTable.Embedded("runout_limits.csv");

    /// <summary>
    /// Holds measured harmonics against the maker's own limit where one is given; else against published examples for this part, which are other
    /// makers' figures. Judged is the greater of what the dial showed and what the fitted harmonics reach around the whole turn.
    /// </summary>
    /// <param name="found">What the readings tell.</param>
    /// <param name="part">What was measured.</param>
    /// <param name="direction">Which way.</param>
    /// <param name="mounting">Where it turned, or null where nobody said.</param>
    /// <param name="material">The wheel's material, or null.</param>
    /// <param name="makerLimit">The vehicle's or the wheel's maker's limit for this part, or null.</param>
    /// <returns>
    /// Within where at most the lowest, not within where above the highest, null between: there makers differ. Where the places cannot tell the amount between
    /// them, not within where the readings themselves are above the highest, else null.
    /// </returns>
    /// <source>each row of runout_limits.csv names its own; the vehicle maker's data rule; own choice: docs/theory/runout-and-matching.md (limits)</source>
    public static RunoutVerdict Judge(RunoutOutcome.Found found, RunoutPart part, RunoutDirection direction, RunoutMounting? mounting, WheelMaterial? material, Limit? makerLimit)
    {
        ArgumentNullException.ThrowIfNull(found);
        if (found.TellsBetween)
        {
            return Judge(found.Judged, part, direction, mounting, material, makerLimit);
        }

        var shown = Judge(found.PeakToPeak, part, direction, mounting, material, makerLimit);
        return shown.Ruling is null || shown.WithinLimit == false ? shown : shown with
        {
            WithinLimit = null,
            Cautions = [.. shown.Cautions, "The places are too few or too crowded to tell the runout between them, and the dial's peak-to-peak is only the least that it can be: it is not called within the limit. Measure at eight places or more, evenly around."],
            MustBeLookedAt = true,
        };
    }

    /// <summary>Holds a peak-to-peak runout, known all around, against the maker's own limit where one is given; else against published examples for this part.</summary>
    /// <param name="peakToPeak">Total indicator reading.</param>
    /// <param name="part">What was measured.</param>
    /// <param name="direction">Which way.</param>
    /// <param name="mounting">Where it turned, or null where nobody said.</param>
    /// <param name="material">The wheel's material, or null.</param>
    /// <param name="makerLimit">The vehicle's or the wheel's maker's limit for this part, or null.</param>
    /// <returns>Within where at most the lowest, not within where above the highest, null between: there makers differ.</returns>
    /// <source>each row of runout_limits.csv names its own; the vehicle maker's data rule</source>
    public static RunoutVerdict Judge(Length peakToPeak, RunoutPart part, RunoutDirection direction, RunoutMounting? mounting, WheelMaterial? material, Limit? makerLimit)
    {
        if (makerLimit is not null)
        {
            var within = Millimetres(peakToPeak) <= makerLimit.Amount.Value!.Value;
            return new RunoutVerdict(makerLimit, within, [new ConsideredRunoutLimit("the maker's own limit", makerLimit)], []) { MustBeLookedAt = !within };
        }

        var considered = Published(part, direction, mounting, material).OrderBy(c => c.Limit.Amount.Value).ToList();
        const string ask = "The vehicle's or the wheel's maker's own limit was not given: ask for it, it rules.";
        if (considered.Count == 0)
        {
            return new RunoutVerdict(null, null, [], [$"{ask} No published limit is held for this, so nothing is judged."]);
        }

        var (lowest, highest) = (considered[0].Limit, considered[^1].Limit);
        bool? verdict = Millimetres(peakToPeak) <= lowest.Amount.Value ? true : Millimetres(peakToPeak) > highest.Amount.Value ? false : null;
        var cautions = new List<string> { $"{ask} Published limits of other vehicles are shown instead; they are examples." };
        if (verdict is null)
        {
            cautions.Add($"Published limits differ here, from {lowest.Amount.Text} to {highest.Amount.Text}, and this lies between: a person must decide by the maker's figure.");
        }

        if (part == RunoutPart.Wheel && material is null)
        {
            cautions.Add("Steel and alloy wheels have other limits: say which it is.");
        }

        return new RunoutVerdict(lowest, verdict, considered, cautions) { MustBeLookedAt = verdict is not true };
    }

    private static IEnumerable<ConsideredRunoutLimit> Published(RunoutPart part, RunoutDirection direction, RunoutMounting? mounting, WheelMaterial? material)
    {
        foreach (var row in Table.Rows)
        {
            var suits = Table.Cell(row, "part") == Word(part)
                && Table.Cell(row, "direction") == Word(direction)
                && (mounting is null || Table.Cell(row, "mounted") is "" || Table.Cell(row, "mounted") == (mounting == RunoutMounting.OnVehicle ? "on" : "off"))
                && (material is null || Table.Cell(row, "material") is "" || Table.Cell(row, "material") == (material == WheelMaterial.Steel ? "steel" : "alloy"));
            if (suits)
            {
                var amount = Amount.Number(double.Parse(Table.Cell(row, "limit_mm"), CultureInfo.InvariantCulture), "mm", 2);
                yield return new ConsideredRunoutLimit(Table.Cell(row, "what"), new Limit(amount, new Source(Table.Cell(row, "source"), Source.StatusOf(Table.Cell(row, "status"))!.Value)));
            }
        }
    }

    /// <summary>The part in one word.</summary>
    /// <source>common practice: the trade's words</source>
    public static string Word(RunoutPart part) => part switch
    {
        RunoutPart.Assembly => "assembly",
        RunoutPart.Tyre => "tyre",
        RunoutPart.Wheel => "wheel",
    };

    /// <summary>The direction in one word.</summary>
    /// <source>common practice: the trade's words</source>
    public static string Word(RunoutDirection direction) => direction switch
    {
        RunoutDirection.Radial => "radial",
        RunoutDirection.Lateral => "lateral",
    };

    // A difference of readings typed in decimals carries rounding in its last bits; 0.8 mm is not above 0.8 mm.
    private static double Millimetres(Length length) => Math.Round(length.Millimetres, 9);
}
