using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Bay;

/// <summary>Whether a puncture may be repaired.</summary>
/// <param name="Missing">What must still be entered, each with its field.</param>
/// <param name="Refused">Why not, each a sentence with its source; empty where nothing speaks against it.</param>
/// <param name="Cautions">What must be seen to.</param>
public sealed record RepairVerdict(IReadOnlyList<(string Field, string What)> Missing, IReadOnlyList<string> Refused, IReadOnlyList<string> Cautions)
{
    /// <summary>True where everything is known and nothing speaks against it.</summary>
    public bool MayBeRepaired => Missing.Count == 0 && Refused.Count == 0;
}

/// <summary>A repair of a visit with the tyre that it is done to.</summary>
/// <param name="Assembly">The tyre on its wheel, where it came in.</param>
/// <param name="Verdict">Whether it may be repaired.</param>
public sealed record JudgedRepair(Assembly Assembly, RepairVerdict Verdict);

/// <summary>Judges a puncture as it was found from inside: what the engine's condition check says of it, and with what it is to be repaired.</summary>
public static class RepairJudge
{
    /// <summary>The repair at the wheel that came in at a position; null where none is asked for, or no tyre is entered there.</summary>
    public static JudgedRepair? OnVisit(VisitState state, Position position)
    {
        ArgumentNullException.ThrowIfNull(state);
        var vehicle = LeavingVehicle.WithRenewals(state.Arrived, state.Work);
        return vehicle.At(position) is { } assembly && state.Work.Repairs.TryGetValue(position, out var repair) ? new JudgedRepair(assembly, Of(vehicle, assembly, repair, state.Work)) : null;
    }

    /// <summary>Judges it.</summary>
    /// <param name="vehicle">The vehicle with its rules.</param>
    /// <param name="assembly">The tyre on its wheel.</param>
    /// <param name="repair">What was found.</param>
    /// <param name="work">What was decided: a finding that a person must decide waits for that.</param>
    public static RepairVerdict Of(FittedVehicle vehicle, Assembly assembly, RepairRecord repair, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(repair);
        ArgumentNullException.ThrowIfNull(work);
        var missing = Missing(assembly, repair, work).ToList();
        var refused = new List<string>();
        var cautions = new List<string>();
        if (repair.Place is { } place && repair.Size is not null)
        {
            var puncture = new Damage(DamageKind.Puncture, place, repair.Size)
            {
                Lean = repair.Lean, FromMiddle = repair.FromMiddle, Around = repair.Around, FromRepair = repair.FromRepair, RoundFromRepair = repair.RoundFromRepair,
            };
            // The repair takes the place of the first puncture found in the tread; every other one counts beside it.
            var found = assembly.Damage.FirstOrDefault(d => d is { Kind: DamageKind.Puncture, Place: DamagePlace.Tread }) ?? assembly.Damage.FirstOrDefault(d => d.Kind == DamageKind.Puncture);
            var alone = vehicle with { Fitted = [assembly with { Damage = [puncture, .. assembly.Damage.Where(d => !ReferenceEquals(d, found))] }] };
            foreach (var finding in ConditionCheck.Run(alone).Findings.Where(OfTheRepair))
            {
                if (finding.Category >= Category.Major)
                {
                    refused.Add(Told(finding));
                }
                else if (finding.Category == Category.Refer && !Repairable(finding) && VisitFindings.Stops(finding, work) is not null)
                {
                    missing.Add(($"work.decisions.{VisitFindings.DecisionKey(finding)}.decision", $"a decision: {Told(finding)}"));
                }

                cautions.AddRange(finding.Cautions);
            }
        }

        if (repair.Kind is { } kind && Improper(kind) is { } why)
        {
            refused.Add($"{why} The hole is filled and the liner is sealed, both from inside, or it is no repair (USTMA puncture repair chart).");
        }

        if (assembly.Tyre is { History.Policy: null })
        {
            cautions.Add("What the tyre's maker says of repairs was not entered: that word comes first. Ask.");
        }

        return new RepairVerdict(missing, refused, [.. cautions.Distinct(StringComparer.Ordinal)]);
    }

    /// <summary>What of the tyre's condition speaks for or against a repair: every damage, and earlier repairs.</summary>
    private static bool OfTheRepair(Finding finding) =>
        finding.Category > Category.None && (finding.Rule.StartsWith("damage.", StringComparison.Ordinal) || finding.Rule.StartsWith("repair.", StringComparison.Ordinal));

    /// <summary>The finding of a puncture against which nothing speaks: what is still to be done is the repair itself.</summary>
    private static bool Repairable(Finding finding) => finding.Rule is "damage.puncture.crown" or "damage.puncture.crown-truck";

    private static string Told(Finding finding) =>
        $"{Capital(finding.Measured.Text)}{(finding.Limit is { Amount.Text: { Length: > 0 } limit } ? $", limit {limit}" : "")}: {finding.Action} ({(finding.Limit?.Source ?? finding.Source).ForPeople})";

    private static string Capital(string text) => string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));

    private static string? Improper(RepairKind kind) => kind switch
    {
        RepairKind.PlugAndPatch => null,
        RepairKind.PlugFromOutside => "A plug or a string from outside is no repair.",
        RepairKind.PlugAlone => "A plug alone is no repair: the liner stays open.",
        RepairKind.PatchAlone => "A patch alone is no repair: water gets to the steel through the hole.",
    };

    private static IEnumerable<(string Field, string What)> Missing(Assembly assembly, RepairRecord repair, VisitWork work)
    {
        var at = RepairRecord.FieldAt(assembly.Position.ToString());
        var tyre = TyreField(assembly.Position, work);
        if (repair.Place is null)
        {
            yield return ($"{at}.place", "where it is");
        }

        if (repair.Size is null)
        {
            yield return ($"{at}.size", "how large the hole is, cleaned");
        }

        if (repair.FromMiddle is null)
        {
            yield return ($"{at}.fromMiddle", "how far from the middle of the tread it reaches");
        }

        if (repair.Lean is null)
        {
            yield return ($"{at}.lean", "how much it leans");
        }

        if (repair.Kind is null)
        {
            yield return ($"{at}.kind", "with what it is repaired");
        }

        if (assembly.Tyre is not { } known)
        {
            yield break;
        }

        if (known.History.Repairs is null)
        {
            yield return ($"{tyre}.repaired", "whether it was repaired before");
        }
        else if (known.History.Repairs.Count > 0 && repair is { FromRepair: null, RoundFromRepair: null })
        {
            yield return ($"{at}.fromRepair", "how far it is from the nearest earlier repair");
        }

        if (known.History.RanLow is null)
        {
            yield return ($"{tyre}.ranLow", "whether it was driven with little or no air");
        }
    }

    /// <summary>Under which path the tyre that is on the wheel now is entered.</summary>
    public static string TyreField(Position position, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.Renewed.ContainsKey(position) ? $"work.renewed.{position}.tyre" : $"fitted.{position}.tyre";
    }
}
