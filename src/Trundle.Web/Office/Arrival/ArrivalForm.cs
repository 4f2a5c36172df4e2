using System.Globalization;
using Microsoft.AspNetCore.Http;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Web.Office.Arrival;

/// <summary>One line of the arrival form: what is asked, what was typed, and what is wrong with it.</summary>
/// <param name="Field">The field that it goes into.</param>
/// <param name="Label">What is asked.</param>
/// <param name="Hint">An example, or why it is asked.</param>
public sealed record ArrivalField(string Field, string Label, string Hint)
{
    /// <summary>The unit that a bare number is taken in, or null where it is no quantity.</summary>
    public string? Unit { get; init; }

    /// <summary>The words to choose from, each with what the page says; empty where it is typed.</summary>
    public IReadOnlyList<(string Word, string Text)> Choices { get; init; } = [];

    /// <summary>A day and a time.</summary>
    public bool IsTime { get; init; }

    /// <summary>Several lines.</summary>
    public bool IsLong { get; init; }

    /// <summary>What stands in it.</summary>
    public string Typed { get; init; } = "";

    /// <summary>What is wrong with it, or null.</summary>
    public string? Problem { get; init; }
}

/// <summary>The form with which the desk takes a vehicle in. It is read by the reader that reads a visit's file.</summary>
/// <param name="Groups">The fields under their headings.</param>
public sealed record ArrivalForm(IReadOnlyList<(string Heading, IReadOnlyList<ArrivalField> Fields)> Groups)
{
    /// <summary>The form as it stands for a visit, or empty for a new one.</summary>
    public static ArrivalForm For(VisitFields fields, UnitHabits units) => new ArrivalForm(Asked(units)).With(field => Shown(field, fields[field.Field]));

    /// <summary>What was sent, with every problem at its field. A visit is opened only where there is none.</summary>
    public static ArrivalForm Read(IFormCollection sent, VisitFields before, UnitHabits units)
    {
        var form = new ArrivalForm(Asked(units)).With(field => field with { Typed = sent[field.Field].ToString().Trim() });
        var assembled = before.With(form.Entries(before, "", DateTimeOffset.MaxValue)).Assemble();
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(assembled.Root, problems);
        VisitWorkReader.Read(file, problems);
        return form.With(field =>
        {
            var problem = problems.FirstOrDefault(p => assembled.FieldOf(p.Where) == field.Field)?.Message;
            if (field.Field == "vehicle.name" && field.Typed.Length == 0)
            {
                problem = "Say what the vehicle is, so that it can be found in the workshop: colour, make-up, a mark.";
            }

            return field.Typed.Length > Entry.MostCharacters
                ? field with { Problem = $"At most {Entry.MostCharacters.ToString(CultureInfo.InvariantCulture)} characters are kept." }
                : field with { Problem = problem };
        });
    }

    /// <summary>True where nothing is wrong.</summary>
    public bool Good => Groups.All(g => g.Fields.All(f => f.Problem is null));

    /// <summary>The entries that bring a visit from what it was to what was sent.</summary>
    public IReadOnlyList<Entry> Entries(VisitFields before, string by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(before);
        var list = new List<Entry>();
        foreach (var field in Groups.SelectMany(g => g.Fields))
        {
            Add(field.Field, Recorded(field));
        }

        // The front axle of a vehicle steers, and the drive tells which axles are driven; the bay can say otherwise.
        var axles = Enumerable.Range(0, 2).Where(i => list.Any(e => e.Typed.Length > 0 && e.Field.StartsWith($"vehicle.axles.{i.ToString(CultureInfo.InvariantCulture)}.", StringComparison.Ordinal))).ToList();
        var drive = list.FirstOrDefault(e => e.Field == "vehicle.drive")?.Typed ?? before["vehicle.drive"] ?? "";
        foreach (var i in axles)
        {
            var at0 = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{i}");
            if (before[$"{at0}.steered"] is null && i == 0)
            {
                Add($"{at0}.steered", "true");
            }

            if (before[$"{at0}.driven"] is null && drive.Length > 0)
            {
                Add($"{at0}.driven", drive == "all" || (drive == "front") == (i == 0) ? "true" : "false");
            }
        }

        return list;

        void Add(string field, string typed)
        {
            if ((before[field] ?? "") != typed)
            {
                list.Add(new Entry(Guid.CreateVersion7(), field, typed, by, Role.Trainee, at));
            }
        }
    }

    private ArrivalForm With(Func<ArrivalField, ArrivalField> change) =>
        new(Groups.Select(g => (g.Heading, (IReadOnlyList<ArrivalField>)[.. g.Fields.Select(change)])).ToList());

    /// <summary>As it is kept: as typed, with the unit that stood beside the field where only a number was typed.</summary>
    private static string Recorded(ArrivalField field) =>
        field.IsTime ? field.Typed.Replace('T', ' ')
        : field.Unit is { } unit && field.Typed.Length > 0 && NumberText.Read(field.Typed).IsRead ? $"{field.Typed} {unit}"
        : field.Typed;

    private static ArrivalField Shown(ArrivalField field, string? kept)
    {
        var text = kept ?? "";
        return field with
        {
            Typed = field.IsTime ? text.Replace(' ', 'T')
                : field.Unit is { } unit && text.EndsWith($" {unit}", StringComparison.Ordinal) ? text[..^(unit.Length + 1)]
                : text,
        };
    }

    private static IReadOnlyList<(string, IReadOnlyList<ArrivalField>)> Asked(UnitHabits units) =>
    [
        ("The vehicle", (ArrivalField[])
        [
            new("vehicle.name", "Vehicle", "What the workshop calls it, for example: blue hatchback, DEMO 07"),
            new("vehicle.vin", "VIN", "Seventeen characters, on the plate or under the windscreen"),
            new("vehicle.odometer", "Odometer", "Miles too, with their unit: 30000 mi") { Unit = "km" },
            new("vehicle.drive", "Driven axle", "") { Choices = [("", "not known yet"), ("front", "front"), ("rear", "rear"), ("all", "all")] },
            new("rules", "Whose rules", "Tread and mixing are judged by the law of the place") { Choices = [("", "choose"), ("uk", "uk"), ("eu", "eu"), ("us", "us")] },
            new("vehicle.complaint", "What the driver says", "In the driver's words") { IsLong = true },
        ]),
        ("The visit", (ArrivalField[])
        [
            new("work.promised", "Promised for", "Day and time") { IsTime = true },
            new("work.bay", "Bay", "Empty while it waits outside"),
            new("work.contact", "Whom to call", ""),
        ]),
        .. Enumerable.Range(0, 2).Select(i => (i == 0 ? "Placard, front axle" : "Placard, rear axle", (IReadOnlyList<ArrivalField>)Axle(i, units))),
    ];

    private static ArrivalField[] Axle(int index, UnitHabits units)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{index}");
        return
        [
            new($"{at}.placard.size", "Tyre", "For example 195/65 R15 91H"),
            new($"{at}.placard.cold", "Cold pressure", "As the placard says") { Unit = units.Pressure },
            new($"{at}.fixings.count", "Fixings on a wheel", "How many nuts or bolts"),
            new($"{at}.fixings.torque", "Maker's torque", "From the vehicle maker; nothing stands in for it") { Unit = units.Torque },
        ];
    }
}
