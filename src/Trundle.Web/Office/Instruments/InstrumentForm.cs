using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;
using Trundle.Web.Office.Forms;

namespace Trundle.Web.Office.Instruments;

/// <summary>A form about an instrument with what stands in it.</summary>
/// <param name="Key">Which form: <c>details</c>, <c>profile</c>, or a record's word.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Typed">What stands in each.</param>
/// <param name="Problem">What is wrong, or null.</param>
public sealed record InstrumentForm(string Key, IReadOnlyList<FormField> Fields, IReadOnlyDictionary<string, string> Typed, Problem? Problem)
    : OfficeForm(Key, Fields, Typed, Problem)
{
    /// <summary>How many points a comparison has room for.</summary>
    public const int Points = 5;

    private static readonly JsonSerializerOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    // What belongs to the machine and not to the day: where masses sit, what its maker states, which test masses it has.
    private static readonly string[] MachineKeeps = ["planes", "rotor", "permissible", "reductionRatio", "minimumAchievable", "testMass", "index.anglesFrom", "index.limit", "repeat.limit"];

    /// <summary>What the instrument is called.</summary>
    public static InstrumentForm Details(Instrument? instrument, DateOnly today) => new(
        "details",
        [
            new("name", "Name", "What the shop calls it: balancer by the window"),
            new("identification", "Identification", "Serial number, or what is engraved on it"),
            .. instrument is null ? new FormField[] { new("kind", "Kind") { Choices = [.. InstrumentWords.All.Select(k => (k.Word(), k.Word()))] } } : [],
            new("inUseFrom", "In use from") { IsDay = true },
            .. instrument is null ? Array.Empty<FormField>() : [new("outOfUseFrom", "Out of use from", "Empty while it is in use") { IsDay = true }],
        ],
        Standing(
            ("name", instrument?.Name), ("identification", instrument?.Identification), ("kind", InstrumentKind.TorqueWrench.Word()),
            ("inUseFrom", InstrumentJson.Day(instrument?.InUseFrom ?? today)), ("outOfUseFrom", InstrumentJson.Day(instrument?.OutOfUseFrom))),
        null);

    /// <summary>A balancer's profile, or the scale of a torque wrench.</summary>
    public static InstrumentForm Profile(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.Kind == InstrumentKind.TorqueWrench)
        {
            return new InstrumentForm(
                "profile",
                [new("least", "Lowest mark of its scale", "With its unit: 40 N·m, 30 lbf·ft; a bare number is N·m"), new("most", "Highest mark of its scale", "Likewise")],
                Flat(instrument.Profile ?? []),
                null);
        }

        return new InstrumentForm(
            "profile",
            [
                new("distanceUnit", "The distance scale counts in") { Choices = [("mm", "mm"), ("cm", "cm"), ("in", "in")] },
                new("distanceZero", "Its zero lies at", "On the axis of the planes; 0 where no other distance is told on it") { Unit = "mm" },
                .. new[] { ("innerClip", "Inner clip"), ("outerClip", "Outer clip"), ("innerAdhesive", "Inner adhesive"), ("outerAdhesive", "Outer adhesive") }.SelectMany(p => new FormField[]
                {
                    new($"weightPlaces.{p.Item1}.radial", $"{p.Item2}, radial", "From half the rim diameter, outwards positive") { Unit = "mm" },
                    new($"weightPlaces.{p.Item1}.axial", $"{p.Item2}, axial", "From the flange of its side, towards the outside positive") { Unit = "mm" },
                }),
                new("displayStep", "Masses are shown in steps of") { Unit = "g" },
                new("displayHidesBelow", "Nothing is shown below", "As the display is used") { Unit = "g" },
                new("displayAngleStep", "Angles are shown in steps of") { Unit = "°" },
            ],
            Flat(instrument.Profile ?? []),
            null);
    }

    /// <summary>A record of a kind, filled with what the person used the last time.</summary>
    public static InstrumentForm Record(StoredInstrument stored, InstrumentRecordKind kind, Person? person, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(stored);
        var last = stored.Records.LastOrDefault(r => r.Kind == kind && r.By == person?.Name) ?? stored.Records.LastOrDefault(r => r.Kind == kind);
        var used = last is null ? [] : JsonNode.Parse(last.Body) as JsonObject ?? [];
        var standing = new Dictionary<string, string>(StringComparer.Ordinal) { ["on"] = InstrumentJson.Day(today)! };
        if (last?.Due is { } due && kind.IsCheck())
        {
            standing["due"] = InstrumentJson.Day(today.AddDays(due.DayNumber - last.On.DayNumber))!;
        }

        // What is measured is measured anew; who checks, what is permitted and where the points lie stays.
        foreach (var (name, text) in Flat(used).Where(u => u.Key is "by" or "permitted" || u.Key.EndsWith("].reference", StringComparison.Ordinal)))
        {
            standing[name] = text;
        }

        if (kind is InstrumentRecordKind.MachineCheck or InstrumentRecordKind.RepeatSpins)
        {
            foreach (var (name, text) in Flat(used).Where(u => MachineKeeps.Any(k => u.Key == k || u.Key.StartsWith(k + ".", StringComparison.Ordinal) || u.Key.EndsWith(k, StringComparison.Ordinal))))
            {
                standing[name] = text;
            }
        }

        var asked = Asked(stored, kind, person);
        foreach (var field in asked.Where(f => f.Unit is not null && standing.GetValueOrDefault(f.Name, "").EndsWith($" {f.Unit}", StringComparison.Ordinal)))
        {
            standing[field.Name] = standing[field.Name][..^(field.Unit!.Length + 1)];
        }

        return new InstrumentForm(kind.Word(), asked, standing, null);
    }

    /// <summary>The record's body as typed; a bare number gets the unit that stood beside it.</summary>
    public string Body(InstrumentKind kind, InstrumentRecordKind record)
    {
        var body = new JsonObject();
        if (record.IsCheck() && record is not (InstrumentRecordKind.MachineCheck or InstrumentRecordKind.RepeatSpins))
        {
            body["kind"] = kind.Word();
        }

        var names = Closed;
        foreach (var field in Fields.Where(f => names.ContainsKey(f.Name)))
        {
            FormRows.Put(body, names[field.Name], record == InstrumentRecordKind.Profile ? this[field.Name] : Recorded(field));
        }

        return body.ToJsonString(Written);
    }

    /// <summary>The form with a problem of its body, said at the row that it is about.</summary>
    public InstrumentForm With(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Closed.FirstOrDefault(n => n.Value == problem.Where && n.Key != n.Value).Key is { } name ? this with { Problem = problem.At(name) } : this with { Problem = problem };
    }

    /// <summary>
    /// The name in the record of each field of the body in which anything stands. What stands ready for a test of which no spin is entered is left out: that
    /// test was not made.
    /// </summary>
    private IReadOnlyDictionary<string, string> Closed
    {
        get
        {
            var made = Fields.GroupBy(f => f.Group).Where(g => g.All(f => f.Row is null) || g.Any(f => f.Row is not null && this[f.Name].Length > 0)).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
            return FormRows.Closed(Fields.Where(f => f.Name is not ("on" or "due" or "supersedes") && this[f.Name].Length > 0 && made.Contains(f.Group)).Select(f => f.Name));
        }
    }

    /// <summary>Every value of a body by its place.</summary>
    public static IReadOnlyDictionary<string, string> Flat(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var flat = new Dictionary<string, string>(StringComparer.Ordinal);
        Walk("", body);
        return flat;

        void Walk(string at, JsonNode? node)
        {
            if (node is JsonObject members)
            {
                foreach (var (key, value) in members)
                {
                    Walk(at.Length == 0 ? key : $"{at}.{key}", value);
                }
            }
            else if (node is JsonArray items)
            {
                for (var i = 0; i < items.Count; i++)
                {
                    Walk(string.Create(CultureInfo.InvariantCulture, $"{at}[{i}]"), items[i]);
                }
            }
            else if (node is JsonValue value)
            {
                flat[at] = value.TryGetValue<string>(out var text) ? text : value.ToJsonString();
            }
        }
    }

    private static IReadOnlyList<FormField> Asked(StoredInstrument stored, InstrumentRecordKind kind, Person? person)
    {
        var list = new List<FormField> { new("on", kind.IsCheck() ? "Checked on" : "On") { IsDay = true } };
        if (kind.IsCheck())
        {
            list.Add(new("due", "Next check due", stored.Instrument.Kind.Interval() is { } interval ? $"{interval.What}: {Quantity.Number(interval.Value, 0)} {interval.Unit}, {interval.Source.ForPeople}. The maker's own comes first; empty where nobody said" : "Empty where nobody said") { IsDay = true });
        }

        switch (kind)
        {
            case InstrumentRecordKind.MachineCheck:
            case InstrumentRecordKind.RepeatSpins:
                list.AddRange(MachineFields.Of(kind));
                break;
            case InstrumentRecordKind.Note:
                list.Add(new("text", "What is worth knowing", "Dropped, repaired, moved to another bay") { Lines = 3 });
                break;
            default:
                list.Add(new("by", "Checked by", kind == InstrumentRecordKind.Comparison ? "And against what" : kind == InstrumentRecordKind.Inspection ? "Who may say that it is safe to use" : "The laboratory or the maker's service"));
                if (kind == InstrumentRecordKind.OutsideCalibration)
                {
                    list.Add(new("certificate", "Certificate"));
                }

                if (kind is InstrumentRecordKind.OutsideCalibration or InstrumentRecordKind.Inspection)
                {
                    list.Add(new("stated", kind == InstrumentRecordKind.Inspection ? "The inspection says" : "The certificate states") { Choices = [("", "nothing"), ("passed", "passed"), ("failed", "failed")] });
                }

                if (UnitOf(stored.Instrument.Kind, person?.Habits ?? UnitHabits.Metric) is { } unit)
                {
                    list.Add(new("permitted", "May be off by", stored.Instrument.Kind == InstrumentKind.TorqueWrench ? "With its unit or %; empty: 4 % above 10 N·m (ISO 6789, second-hand)" : "With its unit or %: the maker's figure"));
                    for (var i = 0; i < Points; i++)
                    {
                        var at = string.Create(CultureInfo.InvariantCulture, $"points[{i}]");
                        var number = (i + 1).ToString(CultureInfo.InvariantCulture);
                        list.Add(new($"{at}.reference", $"Point {number}: the reference says") { Unit = unit });
                        list.Add(new($"{at}.shown", $"Point {number}: this one shows") { Unit = unit });
                    }
                }

                break;
        }

        var earlier = stored.Records.Where(r => r.Kind == kind && !stored.IsSuperseded(r)).Reverse().ToList();
        if (earlier.Count > 0)
        {
            list.Add(new("supersedes", "Stands in place of", "Where an earlier record was wrong")
            {
                Choices = [("", "none: it is a new one"), .. earlier.Select(r => (r.Id.ToString("D"), $"{r.Kind.Word()} of {Instrument.Day(r.On)}"))],
            });
        }

        return list;
    }

    private static string? UnitOf(InstrumentKind kind, UnitHabits habits) => kind switch
    {
        InstrumentKind.TorqueWrench => habits.Torque,
        InstrumentKind.PressureGauge => habits.Pressure,
        InstrumentKind.DepthGauge => habits.Depth,
        InstrumentKind.Balancer => habits.Mass,
        _ => null,
    };

    private static Dictionary<string, string> Standing(params (string Name, string? Text)[] texts) =>
        texts.Where(t => t.Text is not null).ToDictionary(t => t.Name, t => t.Text!, StringComparer.Ordinal);
}
