using System.Globalization;
using Trundle.Visits.Instruments;
using Trundle.Web.Office.Forms;

namespace Trundle.Web.Office.Instruments;

/// <summary>The fields of a balancer's own tests: the file of <c>balance machine</c>, group by group, spin by spin.</summary>
internal static class MachineFields
{
    /// <summary>How many spins the form has room for, where the test itself does not say it.</summary>
    private const int KnownSpins = 4;
    private const int IndexSpins = 6;
    private const int RepeatSpins = 12;
    private const int TraversePlaces = 12;

    /// <summary>The fields of one record.</summary>
    public static IEnumerable<FormField> Of(InstrumentRecordKind kind) =>
        kind == InstrumentRecordKind.RepeatSpins ? [.. Planes(false), .. Repeat()] : [.. Planes(true), .. Shop(), .. Traverse(), .. Known(), .. Index()];

    private static IEnumerable<FormField> Planes(bool rotor)
    {
        const string group = "Where the masses sit";
        yield return new("planes.inner.radius", "Inner plane, radius", "From the axis to the middle of the mass") { Unit = "mm", Group = group };
        yield return new("planes.outer.radius", "Outer plane, radius") { Unit = "mm", Group = group };
        yield return new("planes.inner.axial", "Inner plane, distance", "Growing outwards; only for the couple") { Unit = "mm", Group = group };
        yield return new("planes.outer.axial", "Outer plane, distance") { Unit = "mm", Group = group };
        if (rotor)
        {
            yield return new("rotor.mass", "Mass of the assembly", "Then a fixture's unbalance is told as millimetres off centre") { Unit = "kg", Group = group };
            yield return new("rotor.inertiaDifference", "Inertia about the shaft less that about a diameter", "Then a couple is told as an angle askew") { Unit = "kg·m²", Group = group };
        }

        yield return new("permissible", "Wheels are passed with", "A plane; with repeated spins it becomes the amounts to accept and to reject") { Unit = "g", Group = group };
    }

    private static IEnumerable<FormField> Shop()
    {
        const string group = "Wheel-shop test";
        return
        [
            .. Display("shop.empty", group, "Empty shaft shows"),
            .. Mass("shop.added", group, "On a balanced wheel was put"),
            .. Display("shop.display", group, "Then it shows"),
            .. Enumerable.Range(0, 5).SelectMany(i => Display(Row("shop.repeats", i), group, $"Again, spin {Number(i)}")),
            .. Enumerable.Range(0, 4).SelectMany(i => Display(Row("shop.fourPlaces", i), group, $"Turned on the shaft to {Degrees(i * 90)}")),
        ];
    }

    private static IEnumerable<FormField> Traverse()
    {
        const string group = "Traverse test";
        foreach (var (key, name) in Sides)
        {
            yield return new($"traverse.{key}.testMass", $"Test mass, {name}", "Ten times the least that the maker says can be reached") { Unit = "g", Group = group };
            yield return new($"traverse.{key}.minimumAchievable", $"Maker's minimum, {name}", "Minimum achievable residual unbalance") { Unit = "g·mm", Group = group };
        }

        for (var i = 0; i < TraversePlaces; i++)
        {
            foreach (var (key, name) in Sides)
            {
                yield return new(Row($"traverse.{key}.shown", i), $"{name}, shown") { Unit = "g", Group = group, Row = $"Mass at {Degrees(i * 30)}" };
            }
        }
    }

    private static IEnumerable<FormField> Known()
    {
        const string group = "Known masses: unbalance reduction ratio";
        return
        [
            new("knownMass.reductionRatio", "Maker's reduction ratio", "Without it the ratio is told and not judged") { Unit = "%", Plain = true, Group = group },
            .. Display("knownMass.base", group, "Before any mass it shows"),
            .. Enumerable.Range(0, KnownSpins).SelectMany(i => Mass($"{Row("knownMass.spins", i)}.added[0]", group, $"Spin {Number(i)}: put on").Concat(Display($"{Row("knownMass.spins", i)}.display", group, $"Spin {Number(i)}: it shows"))),
        ];
    }

    private static IEnumerable<FormField> Index()
    {
        const string group = "Index balancing: the wheel turned on the shaft";
        return
        [
            new("index.anglesFrom", "Shown angles count from") { Group = group, Choices = [("", "–"), ("shaft", "the shaft's zero"), ("valve", "the valve")] },
            new("index.limit", "The fixture may show") { Unit = "g", Group = group },
            .. Enumerable.Range(0, IndexSpins).SelectMany(i => new[] { new FormField($"{Row("index.spins", i)}.turned", "wheel turned") { Unit = "°", Plain = true, Group = group, Row = $"Spin {Number(i)}" } }.Concat(Display($"{Row("index.spins", i)}.display", group, $"Spin {Number(i)}"))),
        ];
    }

    private static IEnumerable<FormField> Repeat()
    {
        const string group = "Spins, one after the other, nothing changed";
        return
        [
            new("repeat.limit", "Standard deviation that the maker states") { Unit = "g", Group = group },
            .. Enumerable.Range(0, RepeatSpins).SelectMany(i => Display(Row("repeat.spins", i), group, $"Spin {Number(i)}")),
        ];
    }

    /// <summary>What the machine shows to add, in both planes.</summary>
    private static IEnumerable<FormField> Display(string at, string group, string row)
    {
        foreach (var (key, name) in Sides)
        {
            yield return new($"{at}.{key}.mass", $"{name}, add") { Unit = "g", Group = group, Row = row };
            yield return new($"{at}.{key}.angle", $"{name}, at") { Unit = "°", Plain = true, Group = group, Row = row };
        }
    }

    /// <summary>A known mass that was put on.</summary>
    private static IEnumerable<FormField> Mass(string at, string group, string row) =>
    [
        new($"{at}.plane", "plane") { Group = group, Row = row, Choices = [("", "–"), ("inner", "inner"), ("outer", "outer")] },
        new($"{at}.mass", "mass") { Unit = "g", Group = group, Row = row },
        new($"{at}.angle", "at") { Unit = "°", Plain = true, Group = group, Row = row },
    ];

    private static readonly (string Key, string Name)[] Sides = [("inner", "inner"), ("outer", "outer")];

    private static string Row(string list, int i) => string.Create(CultureInfo.InvariantCulture, $"{list}[{i}]");

    private static string Number(int i) => (i + 1).ToString(CultureInfo.InvariantCulture);

    private static string Degrees(int degrees) => degrees.ToString(CultureInfo.InvariantCulture) + "°";
}
