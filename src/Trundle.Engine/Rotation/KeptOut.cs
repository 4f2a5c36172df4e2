using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Rotation;

/// <summary>A tyre or wheel that no rotation moves as it is: it is replaced, or judged by a person, first.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Part">Tyre or wheel.</param>
/// <param name="Reason">Condemned, to be replaced first, or to be judged first.</param>
/// <param name="Why">What was found and what comes first, in a sentence or two.</param>
/// <param name="Source">Whose rule keeps it out.</param>
public sealed record KeptOut(Position Position, InspectedPart Part, RefusalReason Reason, string Why, Source Source)
{
    private static readonly IReadOnlyList<Row> Rows = Load();

    /// <summary>The rules, or families of them, whose breach can keep a tyre or wheel out.</summary>
    public static IEnumerable<string> Rules => Rows.Select(r => r.Rule);

    /// <summary>True where only another tyre or wheel puts it right.</summary>
    public bool ReplaceFirst => Reason != RefusalReason.ReferFirst;

    /// <summary>
    /// Everything of a vehicle that no rotation moves: condemned, or by its condition to be discarded, renewed or referred, or with a finding of
    /// category major or dangerous. What only its place forbids (a worn tyre in front) is told where it would come to that place.
    /// </summary>
    /// <param name="vehicle">The vehicle with what is fitted.</param>
    /// <param name="settled">True for a finding that a person decided or that was seen to since; null where there is none such.</param>
    /// <returns>One entry for each tyre and wheel kept out, by position.</returns>
    /// <source>rotation_keeps_out.csv, each row with its own source; the verdicts of verdicts.csv</source>
    public static IReadOnlyList<KeptOut> Of(FittedVehicle vehicle, Func<Finding, bool>? settled = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.Fitted.Count == 0 ? [] : [.. Found(vehicle, Found(vehicle), "anywhere", settled)];
    }

    /// <summary>What may not stand where it comes to, on the vehicle as it would be after the moves; named by where it comes to.</summary>
    /// <param name="after">The vehicle after the moves.</param>
    /// <param name="settled">True for a finding that a person decided or that was seen to since.</param>
    /// <source>the rows of rotation_keeps_out.csv that hold there only</source>
    public static IReadOnlyList<KeptOut> There(FittedVehicle after, Func<Finding, bool>? settled)
    {
        ArgumentNullException.ThrowIfNull(after);
        return ThereBy(after, DecidedByPlace(after), settled);
    }

    /// <summary>The same by findings that were made already.</summary>
    /// <param name="after">The vehicle after the moves.</param>
    /// <param name="findings">What was found of it there.</param>
    /// <param name="settled">True for a finding that a person decided or that was seen to since.</param>
    /// <source>the rows of rotation_keeps_out.csv that hold there only</source>
    public static IReadOnlyList<KeptOut> ThereBy(FittedVehicle after, IReadOnlyList<Finding> findings, Func<Finding, bool>? settled) => [.. Found(after, findings, "there", settled)];

    /// <summary>
    /// Only what a place decides of a tyre, which is all that a move changes: its age by the law, its tread in front, a section repair, retreading and regrooving. The
    /// rest of its condition moves with it and was asked once, before any move.
    /// </summary>
    private static IReadOnlyList<Finding> DecidedByPlace(FittedVehicle after)
    {
        var book = new CheckBook(after);
        foreach (var assembly in FitmentCheck.InOrder(after))
        {
            TreadCheck.Check(book, assembly);
            AgeCheck.Check(book, assembly);
            RepairCheck.Check(book, assembly);
            RemadeTyre.Check(book, assembly);
        }

        return book.Result().Findings;
    }

    private static IReadOnlyList<Finding> Found(FittedVehicle vehicle) => [.. ConditionCheck.Run(vehicle).Findings, .. FitmentCheck.Run(vehicle).Findings];

    private static IEnumerable<KeptOut> Found(FittedVehicle vehicle, IReadOnlyList<Finding> findings, string where, Func<Finding, bool>? settled)
    {
        foreach (var assembly in FitmentCheck.InOrder(vehicle))
        {
            foreach (var part in new[] { InspectedPart.Tyre, InspectedPart.Wheel })
            {
                var condemned = where == "anywhere" && (part == InspectedPart.Tyre ? assembly.Tyre?.Condemned : assembly.Wheel?.Condemned) == true;
                if (condemned)
                {
                    yield return new KeptOut(assembly.Position, part, RefusalReason.Condemned, $"The {part.Word()} at {assembly.Position} is condemned and may not be fitted again: replace it first.", Source.CommonPractice);
                    continue;
                }

                var against = findings.Where(f => f.Position == assembly.Position.ToString() && f.Category > Category.Minor && RowOf(f.Rule) is { } row && row.Part == part && row.Where == where && settled?.Invoke(f) != true)
                    .Select(f => (Finding: f, Verdict: Verdicts.Of(f, part, vehicle.Rules)))
                    .Where(f => f.Verdict is { } verdict && verdict >= Verdict.Refer)
                    .OrderByDescending(f => f.Verdict).ThenByDescending(f => f.Finding.Category)
                    .ToList();
                if (against.Count > 0)
                {
                    yield return Of(assembly.Position, part, against);
                }
            }
        }
    }

    private static KeptOut Of(Position position, InspectedPart part, IReadOnlyList<(Finding Finding, Verdict? Verdict)> against)
    {
        var (gravest, verdict) = against[0];
        var replace = verdict is Verdict.Renew or Verdict.Discard;
        var found = string.Join("; ", against.Select(a => a.Finding.Measured.Text).Distinct(StringComparer.Ordinal));
        return new KeptOut(position, part, replace ? RefusalReason.ReplaceFirst : RefusalReason.ReferFirst,
            replace
                ? $"The {part.Word()} at {position} is kept out: {found}. Replace it first. {gravest.Action}"
                : $"The {part.Word()} at {position} is kept out: {found}. It is judged first, and replaced first where it may not stay. {gravest.Action}",
            gravest.Source);
    }

    /// <summary>The row of the longest family that the rule belongs to.</summary>
    private static Row? RowOf(string rule) =>
        Rows.Where(r => rule == r.Rule || rule.StartsWith(r.Rule + ".", StringComparison.Ordinal)).MaxBy(r => r.Rule.Length);

    private static List<Row> Load()
    {
        var table = CsvTable.Embedded("rotation_keeps_out.csv");
        return [.. table.Rows.Select(row => new Row(table.Cell(row, "rule"), Enum.GetValues<InspectedPart>().Single(p => p.Word() == table.Cell(row, "part")), table.Cell(row, "where")))];
    }

    private sealed record Row(string Rule, InspectedPart Part, string Where);
}
