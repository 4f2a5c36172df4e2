using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>What a tyre went through before: repairs that are none, and driving with little or no air.</summary>
internal static class RepairCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tyre?.History is not { } history)
        {
            return;
        }

        var at = assembly.Position.ToString();
        foreach (var repair in history.Repairs ?? [])
        {
            if (repair.Method is RepairMethod.PatchAlone or RepairMethod.PlugAlone || repair.Place != DamagePlace.Tread)
            {
                var method = repair.Method switch
                {
                    RepairMethod.PatchAlone => "patch alone",
                    RepairMethod.PlugAlone => "plug alone",
                    RepairMethod.StemAndPatch => "stem and patch",
                    RepairMethod.Section => "section repair",
                    null => "repair",
                };
                if (repair is { Method: RepairMethod.Section } && assembly.Tyre.Marking?.Size.TyreClass == Sidewall.TyreClass.Truck)
                {
                    // A truck tyre's section repair, wherever it lies, is a repair of its own kind.
                    continue;
                }

                book.Judge("repair.improper", at, true, Amount.Word($"{method}, {DamageCheck.PlaceWord(repair.Place)}"), null);
            }
        }

        if (assembly.Position is { Axle: 1 } && !VehicleClasses.IsTrailer(book.Vehicle.VehicleClass) && history.Repairs?.Any(r => r.Method == RepairMethod.Section) == true)
        {
            book.Judge("repair.section-front", at, true, Amount.Word("section repair on the front axle"), null);
        }

        // Where it is punctured, the same is said as what speaks against a repair; nobody decides one fact twice.
        if (history.RanLow == true && !assembly.Damage.Any(d => d is { Kind: DamageKind.Puncture, Place: DamagePlace.Tread }))
        {
            book.Judge("pressure.ran-low", at, true, RunLow.Told(history), null, null, [.. RunLow.Cautions(assembly.Tyre)]);
        }
    }
}
