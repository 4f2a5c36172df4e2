using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Store.Tests;

/// <summary>
/// The store reads of a visit only what an entry is held against. What it makes of each entry is held here against the reading of the whole visit, which is
/// what the page and the sheet read.
/// </summary>
public sealed class OutcomeTests : IDisposable
{
    private static readonly string[] Odd = ["", "true", "x", "-3", "2.3 bar", "99999 mm", "1L", "uk", "done", "1,234 mm", "2026-03-14", "inner", "195/65 R15 91H"];

    private readonly Workshop _workshop = new();

    public void Dispose() => _workshop.Dispose();

    public static TheoryData<string> Visits() =>
        [.. new[] { Path.Combine(AppContext.BaseDirectory, "visit-blue-hatchback.json"), Path.Combine(AppContext.BaseDirectory, "visit-copper-lorry.json"), Path.Combine(AppContext.BaseDirectory, "visit-plum-saloon.json") }
            .Concat(Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "vehicles"), "*.json")).Select(f => Path.GetRelativePath(AppContext.BaseDirectory, f))];

    [Theory]
    [MemberData(nameof(Visits))]
    public void What_is_made_of_an_entry_is_what_the_whole_visit_makes_of_it(string file)
    {
        var fields = new List<(string Field, string Typed)>();
        Walk("", JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file))), fields);
        var visit = _workshop.OpenVisit();
        var minute = 0.0;
        foreach (var part in fields.Chunk(VisitStore.MostInBatch))
        {
            _workshop.Append(visit, [.. part.Select(f => Workshop.Typed(f.Field, f.Typed, minute += 0.001))]);
        }

        var random = new Random(7);
        var problems = 0;
        for (var i = 0; i < 60; i++)
        {
            var (field, typed) = fields[random.Next(fields.Count)];
            var entry = Workshop.Typed(i % 5 == 0 ? field + ".odd" : field, random.Next(3) == 0 ? typed : Odd[random.Next(Odd.Length)], minute += 0.001);
            if (!_workshop.Append(visit, entry).Taken.Contains(entry.Id))
            {
                continue; // A field that may not be entered so.
            }

            var stored = _workshop.Store.Visits.Find(visit)!;
            var kept = stored.Entries.Single(e => e.Entry.Id == entry.Id);
            var (code, words) = Whole(stored.Fields, entry.Field);
            (kept.Outcome, kept.Problem).ShouldBe(entry.Typed.Length == 0 ? ("emptied", null) : (code ?? "read", words), $"{entry.Field} '{entry.Typed}'");
            problems += code is null ? 0 : 1;
        }

        problems.ShouldBeGreaterThan(5);
    }

    [Fact]
    public void A_name_is_held_against_those_at_every_other_place()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("fitted.1L.tyre.id", "T-7", 1));
        _workshop.Append(visit, Workshop.Typed("fitted.1R.tyre.id", "T-7", 2));
        _workshop.Store.Visits.Find(visit)!.Entries.Single(e => e.Entry.Field == "fitted.1R.tyre.id").Outcome.ShouldBe("tyre-twice");
    }

    [Fact]
    public void What_was_erased_is_not_remembered()
    {
        var visit = _workshop.OpenVisit();
        _workshop.Append(visit, Workshop.Typed("work.contact", "the driver, 0000 070 031", 1));
        _workshop.Append(visit, Workshop.Typed("work.bay", "2", 2));
        _workshop.Store.Visits.EraseContact(visit, "D1", Role.Desk, Workshop.Morning.AddHours(5)).IsRead.ShouldBeTrue();
        var later = Workshop.Typed("work.contact", "", 400);
        _workshop.Append(visit, later);
        var stored = _workshop.Store.Visits.Find(visit)!;
        stored.Entries.ShouldAllBe(e => !e.Entry.Typed.Contains("0000", StringComparison.Ordinal));
        stored.Fields["work.contact"].ShouldBeNull();
    }

    [Fact]
    public void Two_programs_on_one_file_see_each_others_entries()
    {
        var visit = _workshop.OpenVisit();
        var other = WorkshopStore.Open(_workshop.Path);
        _workshop.Append(visit, Workshop.Typed("vehicle.name", "Grey van", 1));
        var theirs = Workshop.Typed("vehicle.name", "Blue van", 2);
        other.Visits.Append(visit, [theirs], Workshop.Morning.AddHours(4));
        var ours = Workshop.Typed("vehicle.name", "Green van", 3);
        _workshop.Append(visit, ours);
        _workshop.Store.Visits.Find(visit)!.Entries.Single(e => e.Entry.Id == ours.Id).Supersedes.ShouldBe(theirs.Id);
    }

    private static (string? Code, string? Words) Whole(VisitFields fields, string field)
    {
        var assembled = fields.Assemble();
        var problems = new List<Problem>();
        VisitWorkReader.Read(VisitFileReader.Read(assembled.Root, problems), problems);
        var problem = problems.FirstOrDefault(p => assembled.FieldOf(p.Where) == field);
        return (problem?.Code, problem?.Message);
    }

    private static void Walk(string path, JsonNode? node, List<(string, string)> fields)
    {
        switch (node)
        {
            case JsonObject members:
                foreach (var (key, value) in members.Where(m => m.Key is not ("position" or "by" or "role" or "at") || path.Length == 0))
                {
                    Walk(path.Length == 0 ? key : $"{path}.{key}", value, fields);
                }

                break;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                {
                    var name = path == "fitted" ? items[i]!["position"]!.GetValue<string>() : (path.StartsWith("work.steps.", StringComparison.Ordinal) ? i + 1 : i).ToString(CultureInfo.InvariantCulture);
                    Walk($"{path}.{name}", items[i], fields);
                }

                break;
            case JsonValue value:
                fields.Add((path, value.TryGetValue<string>(out var text) ? text : value.ToJsonString()));
                break;
            default:
                break;
        }
    }
}
