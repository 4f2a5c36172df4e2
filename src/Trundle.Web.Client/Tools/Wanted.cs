using System.Globalization;

namespace Trundle.Web.Client.Tools;

/// <summary>What is still needed, in the words of the page: a file's own key says little to a hand.</summary>
public static class Wanted
{
    // The first whose path fits: '*' stands for a number, and a path that ends in '.' for all under it.
    private static readonly (string Tool, string Path, string Words)[] All =
    [
        ("why", "entered.rimDistance", "the rim distance as set"),
        ("why", "entered.rimDiameter", "the rim diameter as set"),
        ("why", "entered.rimWidth", "the rim width as set"),
        ("why", "entered", "the settings"),
        ("why", "machine", "the balancer’s repeatability"),
        ("why", "machine.repeatability", "the balancer’s repeatability"),
        ("why", "spins", "what the first spin showed"),
        ("why", "spins.*.fittedAfter.*.", "the whole of weight {1} after spin {0}: plane, mass, angle"),
        ("why", "spins.*.display.inner.", "what the inner plane showed at spin {0}"),
        ("why", "spins.*.display.outer.", "what the outer plane showed at spin {0}"),
        ("why", "spins.*.", "what both planes showed at spin {0}"),
        ("runout", "part", "what is measured"),
        ("runout", "direction", "which way the dial looks"),
        ("runout", "mountings.*.turn", "how far the tyre is turned at mounting {0}"),
        ("runout", "mountings.*.", "the readings of mounting {0}, at three places at least"),
        ("runout", "", "readings at three places at least"),
        ("match", "on", "what is matched on"),
        ("match", "mountings.*.turn", "how far the tyre is turned at mounting {0}"),
        ("match", "mountings.*.", "how much and where at mounting {0}"),
        ("match", "mountings", "two mountings"),
        ("match", "tyres.*.", "what was measured of tyre {0}, and its name"),
        ("match", "wheels.*.", "what was measured of wheel {0}, and its name"),
        ("match", "tyres", "the tyres"),
        ("match", "wheels", "the wheels"),
        ("trial", "runs.*.trial.mass", "the trial mass"),
        ("trial", "runs.*.trial.", "where the mass of run {0} sat"),
        ("trial", "runs.*.vibration.*.phase", "the phase of run {0}"),
        ("trial", "runs.*.", "what the meter showed in run {0}"),
        ("trial", "runs", "the runs"),
        ("calibrate", "rotation", "which way it turns"),
        ("calibrate", "phases", "whether phases lag or lead"),
        ("calibrate", "planes", "where the known masses sit"),
        ("calibrate", "planes.inner.", "where the inner known mass sits: radius and distance"),
        ("calibrate", "planes.outer.", "where the outer known mass sits: radius and distance"),
        ("calibrate", "spins.*.added.*.", "the whole of known mass {1} of spin {0}: plane, mass, angle"),
        ("calibrate", "spins.*.speed", "the speed of spin {0}"),
        ("calibrate", "spins.*.", "what both transducers read in spin {0}"),
        ("calibrate", "spins", "at each speed a plain spin and one with a known mass in each plane"),
        ("balancer", "planes", "where the weights sit: the radius of both planes"),
        ("balancer", "planes.inner.", "where the weights sit in the inner plane: the radius"),
        ("balancer", "planes.outer.", "where the weights sit in the outer plane: the radius"),
        ("balancer", "traverse.inner.testMass", "the test mass"),
        ("balancer", "traverse.outer.testMass", "the test mass"),
        ("balancer", "traverse.inner.", "the amounts shown at all twelve places"),
        ("balancer", "traverse.outer.", "the amounts shown at all twelve places"),
        ("balancer", "knownMass.base.", "what was shown before any mass went on, in both planes"),
        ("balancer", "knownMass.spins.*.display.", "what was shown at spin {0}, in both planes"),
        ("balancer", "knownMass.spins.*.added.*.", "the whole of known mass {1} of spin {0}: plane, mass, angle"),
        ("balancer", "knownMass.spins.*.", "the known mass of spin {0}, and what was shown"),
        ("balancer", "knownMass.spins", "a spin with a known mass"),
        ("balancer", "index.anglesFrom", "what the angles count from"),
        ("balancer", "index.spins.*.turned", "how far the wheel was turned at spin {0}"),
        ("balancer", "index.spins.*.", "what was shown at spin {0}, in both planes"),
        ("balancer", "index.spins", "a spin in a second position of the wheel"),
        ("balancer", "repeat.spins.*.", "what was shown at spin {0}, in both planes"),
        ("balancer", "repeat.spins", "three spins at least; ten say more"),
        ("balancer", "shop.empty.", "what the empty shaft shows, in both planes"),
        ("balancer", "shop.added.", "the whole of the known mass: plane, mass, angle"),
        ("balancer", "shop.added", "the known mass that was put on"),
        ("balancer", "shop.display.", "what was shown with the known mass on, in both planes"),
        ("balancer", "shop.display", "what was shown with the known mass on"),
        ("balancer", "shop.repeats.*.", "what spin {0} of five showed, in both planes"),
        ("balancer", "shop.repeats", "five spins"),
        ("balancer", "shop.fourPlaces.*.", "what place {0} of four showed, in both planes"),
        ("balancer", "shop.fourPlaces", "four places"),
        ("balancer", "shop", "the readings of this test"),
        ("balancer", "", "where the weights sit: the radius of both planes"),
        ("capture", "rotation", "which way it turned"),
        ("leak", "readings.*.at", "when reading {0} was taken"),
        ("leak", "readings.*.temperature", "how warm the tyre was at reading {0}"),
        ("leak", "readings.*.", "what the gauge showed at reading {0}"),
        ("leak", "readings", "two readings, some days apart"),
        ("replace", "vehicle.axles", "the placard’s size of an axle"),
        ("replace", "vehicle.axles.*.placard.size", "the placard’s size of axle {0}"),
        ("replace", "replace.candidates.*.", "the marking of size {0}"),
        ("replace", "replace.speedometer.", "what the speedometer showed, and the true speed"),
        ("capture", "phases", "whether phases lag or lead"),
        ("capture", "sampleRate", "the sample rate"),
    ];

    /// <summary>The words for a field of a tool, or null where there are none of the page's own.</summary>
    public static string? Of(string tool, string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var names = field.Split('.');
        foreach (var (of, path, words) in All)
        {
            if (of == tool && Numbers(path, names) is { } numbers)
            {
                return string.Format(CultureInfo.InvariantCulture, words, [.. numbers.Cast<object>()]);
            }
        }

        return null;
    }

    /// <summary>The numbers of the rows, from 1, where the path fits; else null.</summary>
    private static List<int>? Numbers(string path, string[] names)
    {
        var steps = path.Length == 0 ? [""] : path.Split('.');
        var under = steps[^1].Length == 0;
        if (under ? names.Length < steps.Length - 1 : names.Length != steps.Length)
        {
            return null;
        }

        var numbers = new List<int>();
        for (var i = 0; i < steps.Length - (under ? 1 : 0); i++)
        {
            if (steps[i] == "*" && int.TryParse(names[i], NumberStyles.None, CultureInfo.InvariantCulture, out var n))
            {
                numbers.Add(n + 1);
            }
            else if (steps[i] != names[i])
            {
                return null;
            }
        }

        return numbers;
    }
}
