using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Keeping;

/// <summary>The records of a set of wheels in storage.</summary>
public static class SetRecords
{
    /// <summary>Taken into storage: a whole description.</summary>
    public const string TakenIn = "taken in";

    /// <summary>The description put right, whole; the earlier one stays.</summary>
    public const string Corrected = "corrected";

    /// <summary>Moved to another place.</summary>
    public const string Moved = "moved";

    /// <summary>Anything worth knowing.</summary>
    public const string Note = "note";

    /// <summary>Given out: on its vehicle, or to its owner.</summary>
    public const string GivenOut = "given out";

    /// <summary>Whom to call was taken out of all records.</summary>
    public const string OwnerErased = "whom to call erased";

    /// <summary>Reads a record's body strictly.</summary>
    /// <param name="kind">The record's word.</param>
    /// <param name="body">Its body.</param>
    /// <returns>The first problem at its field, or null.</returns>
    public static Problem? Problem(string kind, string body) => kind switch
    {
        TakenIn or Corrected => SetDescription.Read(body).Problem,
        Moved => Told(body, "place", "say where it stands now, for example rack B, shelf 3"),
        Note => Told(body, "text", "say what is to be known"),
        GivenOut => Told(body, "to", "say to whom, or onto which vehicle"),
        _ => new Problem("form", "word-unknown", "Open the page again and use one of its forms."),
    };

    private static Problem? Told(string body, string key, string what) => FileNode.Parse(body, "body").Match(
        root =>
        {
            var problems = new List<Problem>();
            var o = new FileObject(root, problems);
            if (o.Require(key, what) && o.Text(key) is { Length: > Entry.MostCharacters })
            {
                o.Wrong(key, "too-long", string.Create(CultureInfo.InvariantCulture, $"At most {Entry.MostCharacters} characters are kept."));
            }

            o.Done();
            return problems.FirstOrDefault();
        },
        problem => problem);
}

/// <summary>What is written down of a set when it is taken in: where it stands, whose it is, and the fields of a visit's file for vehicle and wheels.</summary>
/// <param name="Place">Where it stands, as typed.</param>
/// <param name="Owner">Whom to call, or null.</param>
/// <param name="Season">Summer, winter, all seasons, as typed; or null.</param>
/// <param name="Fields">The fields of vehicle and wheels.</param>
public sealed record SetDescription(string Place, string? Owner, string? Season, VisitFields Fields)
{
    private static readonly string[] Parts = ["rules", "country", "vehicle", "fitted"];

    /// <summary>True for a field of a visit that a set takes along: the vehicle, its rules, and the wheels as they came; not what belongs to that day.</summary>
    public static bool Takes(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Entry.IsField(field) && Parts.Contains(field.Split('.')[0]) && field is not ("vehicle.complaint" or "vehicle.odometer")
            && !field.Contains(".balance.", StringComparison.Ordinal) && !WheelStudies.All.Any(s => field.Contains($".{s.Key}.", StringComparison.Ordinal));
    }

    /// <summary>Reads a description strictly: vehicle and wheels by the reader that reads a visit's file.</summary>
    public static Reading<SetDescription> Read(string body) => FileNode.Parse(body, "body").Then(root =>
    {
        var problems = new List<Problem>();
        var o = new FileObject(root, problems);
        var place = o.Require("place", "say where it stands, for example rack B, shelf 3") ? o.Text("place") : null;
        var (owner, season) = (o.Text("owner"), o.Text("season"));
        var fields = new List<Entry>();
        if (o.Object("fields") is { } list)
        {
            foreach (var (field, node) in root.Member("fields")!.Members)
            {
                list.Knows(field);
                if (Takes(field) && node.Kind == NodeKind.Text && node.Text.Length <= Entry.MostCharacters)
                {
                    fields.Add(new Entry(Guid.Empty, field, node.Text, "", Role.Trainee, DateTimeOffset.UnixEpoch));
                }
                else
                {
                    problems.Add(new Problem(field, "field-unreadable", $"'{NumberText.Shown(field)}' is not a field of a stored set, or holds no text."));
                }
            }
        }

        o.Done();
        var visit = VisitFields.Of(fields);
        if (problems.Count == 0)
        {
            Judge(visit, problems);
        }

        return problems.Count > 0 ? Reading<SetDescription>.Failed(problems[0]) : Reading<SetDescription>.Of(new SetDescription(place!, owner, season, visit));
    });

    /// <summary>The description as it is kept.</summary>
    public string Body() => new JsonObject
    {
        ["place"] = Place,
        ["owner"] = Owner,
        ["season"] = Season,
        ["fields"] = new JsonObject([.. Fields.Newest.Where(e => e.Typed.Length > 0).Select(e => KeyValuePair.Create(e.Field, (JsonNode?)JsonValue.Create(e.Typed)))]),
    }.ToJsonString();

    private static void Judge(VisitFields fields, List<Problem> problems)
    {
        var assembled = fields.Assemble();
        var found = new List<Problem>();
        var file = VisitFileReader.Read(assembled.Root, found);
        problems.AddRange(found.Select(p => p.At(assembled.FieldOf(p.Where))));
        if (string.IsNullOrWhiteSpace(fields["vehicle.name"]))
        {
            problems.Add(new Problem("vehicle.name", "missing", "Say which vehicle it belongs to, as the workshop calls it."));
        }
        else if (problems.Count == 0 && file.Subject.Fitted.Count == 0)
        {
            problems.Add(new Problem("fitted", "missing", "No wheel was entered: give at least one, with the position that it came from."));
        }
    }
}

/// <summary>A set of wheels in storage, as its records leave it.</summary>
public sealed record WheelSet
{
    private WheelSet(KeptThing kept, SetDescription description) => (Kept, Description) = (kept, description);

    /// <summary>Its number, its visit and all its records.</summary>
    public KeptThing Kept { get; }

    /// <summary>The newest description.</summary>
    public SetDescription Description { get; }

    /// <summary>What the workshop calls the vehicle.</summary>
    public string Vehicle => Description.Fields["vehicle.name"] ?? "";

    /// <summary>Where it stands, or stood last.</summary>
    public required string Place { get; init; }

    /// <summary>Since when it is in storage.</summary>
    public required DateOnly InOn { get; init; }

    /// <summary>When it was given out, or null while it is in storage.</summary>
    public DateOnly? OutOn { get; init; }

    /// <summary>To whom or onto what it was given out.</summary>
    public string? OutTo { get; init; }

    /// <summary>Positions that its wheels came from.</summary>
    public IReadOnlyList<string> Positions => [.. Description.Fields.Under("fitted").Select(e => e.Field.Split('.')[1]).Distinct()];

    /// <summary>The set of a thing's records; null where they hold no description that can be read.</summary>
    public static WheelSet? Of(KeptThing kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        SetDescription? description = null;
        var (place, inOn, outOn, outTo) = ("", default(DateOnly), (DateOnly?)null, (string?)null);
        foreach (var record in kept.Records)
        {
            switch (record.Kind)
            {
                case SetRecords.TakenIn or SetRecords.Corrected when SetDescription.Read(record.Body) is { IsRead: true } read:
                    description = read.Value;
                    place = description.Place;
                    inOn = record.Kind == SetRecords.TakenIn ? record.On : inOn;
                    break;
                case SetRecords.Moved:
                    place = KeptText.Of(record.Body, "place") ?? place;
                    break;
                case SetRecords.GivenOut:
                    (outOn, outTo) = (record.On, KeptText.Of(record.Body, "to"));
                    break;
            }
        }

        return description is null ? null : new WheelSet(kept, description) { Place = place, InOn = inOn, OutOn = outOn, OutTo = outTo };
    }

    /// <summary>
    /// The file of the set on a day, as the operations read it. Pressures of the day it came in are left out: air goes on leaving, and so they are measured anew.
    /// </summary>
    public AssembledFile FileOn(DateOnly day) => VisitFields.Of(
    [
        .. Description.Fields.Newest.Where(e => !e.Field.Contains(".pressure.", StringComparison.Ordinal)),
        new Entry(Guid.Empty, "date", day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "", Role.Trainee, DateTimeOffset.UnixEpoch),
    ]).Assemble();

    /// <summary>What <c>inspect</c> finds wrong with the set on a day, gravest first; the problem where its file cannot be read.</summary>
    public Reading<IReadOnlyList<Finding>> ConditionOn(DateOnly day)
    {
        var problems = new List<Problem>();
        var subject = VisitFileReader.Read(FileOn(day).Root, problems).Subject;
        return problems.Count > 0
            ? Reading<IReadOnlyList<Finding>>.Failed(problems[0])
            : Reading<IReadOnlyList<Finding>>.Of([.. InspectOperation.Check(subject).Faults.OrderByDescending(f => f.Category)]);
    }

    /// <summary>True where a word of a search names this set: its number or address, its vehicle, its place, or a TIN.</summary>
    public bool IsNamed(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var key = CondemnedNames.Key(words);
        return key.Length > 0 && (words.Contains(Kept.Id.ToString("D"), StringComparison.OrdinalIgnoreCase)
            || new[] { Kept.Number, Vehicle, Place, Description.Owner ?? "", Description.Season ?? "" }
                .Concat(Positions.Select(p => Description.Fields[$"fitted.{p}.tyre.tin"] ?? ""))
                .Any(text => CondemnedNames.Key(text).Contains(key, StringComparison.Ordinal)));
    }
}
