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
                    // A truck tyre's section repair is a repair of its own kind.
                    continue;
                }

                book.Judge("repair.improper", at, true, Amount.Word($"{method}, {DamageCheck.PlaceWord(repair.Place)}"), null);
            }
        }

        if (history.RanLow == true)
        {
            book.Judge("pressure.ran-low", at, true, RunLow.Told(history), null, null, [.. RunLow.Cautions(assembly.Tyre)]);
        }
    }
}
