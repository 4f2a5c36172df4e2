using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>What was renewed, which punctures were repaired or refused, and where a loss of air was looked for, as plain sentences.</summary>
internal static class SheetRenewals
{
    /// <summary>New tyres, each with the valve that went in with it; valves that were renewed under an old tyre; other wheels.</summary>
    public static IEnumerable<string> Renewed(VisitState state, IReadOnlyList<SheetWheel> wheels)
    {
        foreach (var alike in wheels.Where(w => w.Renewed is not null).GroupBy(w => $"{Tyre(w.Renewed!.Tyre)}{(w.RenewedValve is { } valve ? $"; new valve{Kind(valve)}" : "")}", StringComparer.Ordinal))
        {
            yield return $"{Many("New tyre on the wheel", "New tyres on the wheels", alike)}: {alike.Key}.";
        }

        foreach (var alike in wheels.Where(w => w.Renewed is null && w.RenewedValve is not null).GroupBy(w => Kind(w.RenewedValve!), StringComparer.Ordinal))
        {
            yield return $"{Many($"New valve{alike.Key} in the wheel", $"New valves{alike.Key} in the wheels", alike)}.";
        }

        foreach (var alike in wheels.Where(w => w.RenewedWheel is not null).GroupBy(w => Stamped(w.RenewedWheel!), StringComparer.Ordinal))
        {
            yield return $"{Many($"Another wheel{alike.Key} in the place of the one", $"Other wheels{alike.Key} in the place of those", alike)}.";
        }

        foreach (var line in state.Work.Licensed.Where(l => l.Value.Whole).OrderBy(l => l.Key.ToString(), StringComparer.Ordinal))
        {
            yield return $"Tyre of the wheel that came from the {state.Arrived.Vehicle.InWords(line.Key)}, a rim of several pieces: done by {line.Value.By}, paper {line.Value.Paper}.";
        }
    }

    /// <summary>Each puncture that a repair was asked for: repaired, refused with the first reason, or not finished.</summary>
    public static IEnumerable<string> Punctures(VisitState state)
    {
        foreach (var (position, repair) in state.Work.Repairs.OrderBy(r => r.Key.ToString(), StringComparer.Ordinal))
        {
            var at = state.Arrived.Vehicle.InWords(position);
            var verdict = RepairJudge.OnVisit(state, position)?.Verdict;
            if (verdict is { Refused: [var why, ..] })
            {
                yield return $"Puncture at the {at} NOT repaired. {why}";
            }
            else if (verdict is not { MayBeRepaired: true } || state.Work.At(position.ToString(), "repair-marked") is null)
            {
                yield return $"Puncture at the {at}: its repair is not finished.";
            }
            else
            {
                var tight = state.Work.At(position.ToString(), "soap-test")?.Word;
                yield return $"Puncture at the {at} repaired from inside: {string.Join(", ", new[]
                {
                    repair.Size is { } size ? $"hole of {size.Text("mm", 1)} in the {repair.Place!.Value.ToString().ToLowerInvariant()}" : null,
                    repair.Kind is { } kind ? RepairRecord.KindWords.First(w => w.Value == kind).Word : null,
                    repair.Material,
                }.OfType<string>())}{(tight is null ? "" : $"; soap test: {tight}")}.";
            }
        }
    }

    /// <summary>Where soap and water looked for a leak, and how fast a tyre was found to lose air.</summary>
    public static IEnumerable<string> Losses(VisitState state, IReadOnlyList<SheetWheel> wheels, SheetUnits units)
    {
        var tested = wheels.Select(w => (w.Position, Word: state.Work.At(w.Position.ToString(), "soap-test")?.Word)).Where(t => t.Word is not null).ToList();
        if (tested.Count > 0)
        {
            yield return $"Looked for leaks with soap and water: {string.Join("; ", tested.GroupBy(t => t.Word, StringComparer.Ordinal).Select(g => $"{string.Join(" ", g.Select(t => t.Position))} {g.Key}"))}.";
        }

        foreach (var wheel in wheels.Where(w => w.Leak is not null))
        {
            var leak = wheel.Leak!;
            if (leak["notAnswered"] is not null)
            {
                yield return $"Loss of air at the {Small(wheel)}: followed, not told yet by the readings so far.";
                continue;
            }

            var month = leak["lossPerMonth"]!;
            var readings = leak["readings"]!.AsArray();
            yield return string.Create(CultureInfo.InvariantCulture, $"Loss of air at the {Small(wheel)}, temperature taken out: {FileLosses.Loss(month["estimateKilopascals"]!, units)} a month by {readings.Count} readings; a sound tyre loses at most {FileLosses.Loss(leak["sound"]!["value"]!, units)}. {Verdict(leak["verdict"]!.GetValue<string>())}");
        }
    }

    private static string Verdict(string word) => word switch
    {
        "leak" => "It leaks.",
        "sound" => "It is tight.",
        "moreThanSound" => "It loses more than a sound tyre.",
        "rose" => "Its pressure rose: something else than a leak is at work.",
        _ => "Whether it leaks cannot be told yet.",
    };

    /// <summary>"New tyres on the wheels that came from the front left and front right".</summary>
    private static string Many(string one, string several, IEnumerable<SheetWheel> wheels)
    {
        var names = wheels.Select(Small).ToList();
        return $"{(names.Count == 1 ? one : several)} that came from the {string.Join(", ", names.SkipLast(1))}{(names.Count == 1 ? "" : " and ")}{names[^1]}";
    }

    private static string Tyre(FittedTyre tyre) => $"{tyre.Marking?.Typed ?? "marking not entered"}{(tyre.Tin is { } tin ? $", TIN {tin}" : "")}";

    private static string Stamped(Wheel wheel) => wheel.Rim is null && wheel.Id is null ? "" : $" ({string.Join(", ", new[] { wheel.Rim?.Text, wheel.Id }.OfType<string>())})";

    private static string Small(SheetWheel wheel) => wheel.Name.ToLowerInvariant();

    private static string Kind(Valve valve) => valve.Kind switch
    {
        ValveKind.RubberSnapIn => ", rubber snap-in",
        ValveKind.HighPressureSnapIn => ", high-pressure snap-in",
        ValveKind.ClampIn => ", clamp-in metal",
        null => "",
    };
}
