using System.Text;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Files;

/// <summary>Twenty thousand seeded visit files, spoiled in their text or in their values: read, or problems with place, code and message; never an exception, never a hang.</summary>
public sealed class VisitFileFuzzTests
{
    private const int Inputs = 20_000;

    private static readonly TimeSpan Most = TimeSpan.FromMinutes(10);

    private const string Characters = "{}[]\",:0123456789.eE+-truefalsn \\/\u0000\u001f\u00a0\ud83d\udeab½²߀x\n\t\ufeff";

    private static readonly Func<JsonNode?>[] Strange =
    [
        () => null, () => JsonValue.Create(true), () => JsonValue.Create(-1), () => JsonValue.Create(1e300), () => JsonValue.Create(0.1), () => JsonValue.Create(""),
        () => JsonValue.Create(" "), () => JsonValue.Create("1,234 kPa"), () => JsonValue.Create("6/32"), () => JsonValue.Create("\u07c0\u07c1 mm"), () => JsonValue.Create("\ud83d\udeab"),
        () => new JsonArray(), () => new JsonObject(), () => new JsonArray(new JsonArray(new JsonArray())), () => JsonValue.Create(new string('9', 400)),
        () => JsonValue.Create("M1\u07c0x1.5"), () => JsonValue.Create("205/55R"), () => JsonValue.Create("9L"), () => JsonValue.Create("2Lo"), () => JsonValue.Create("9999-99-99"),
        () => JsonValue.Create("NaN"), () => JsonValue.Create("5 x 112 mm"), () => JsonValue.Create("-300 °C"), () => new JsonObject { ["value"] = 3, ["value "] = "x" },
    ];

    [Fact]
    public void The_file_that_is_spoiled_is_sound()
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse(InventedVisit.Json, "visit.json").Value, problems);
        problems.ShouldBeEmpty();
        file.Subject.Fitted.Count.ShouldBe(5);
    }

    [Fact]
    public async Task Spoiled_files_are_read_or_refused()
    {
        var (read, refused) = await Task.Run(Fuzz).WaitAsync(Most);
        read.ShouldBeGreaterThan(Inputs / 100, "some files should stay readable, or the fuzz reaches nothing behind the first syntax error");
        refused.ShouldBeGreaterThan(Inputs / 4);
    }

    private static (int Read, int Refused) Fuzz()
    {
        var random = new Random(52_4);
        var read = 0;
        for (var i = 0; i < Inputs; i++)
        {
            var json = i % 4 == 0 ? SpoiledText(random) : SpoiledValues(random);
            try
            {
                read += Check(json) ? 1 : 0;
            }
            catch (Exception e) when (e is not ShouldAssertException)
            {
                throw new InvalidOperationException($"Input {i} threw:\n{json}", e);
            }
        }

        return (read, Inputs - read);
    }

    private static bool Check(string json)
    {
        var root = FileNode.Parse(json, "visit.json");
        if (!root.IsRead)
        {
            Sound(root.Problem!, json);
            root.Problem!.Where.ShouldNotBeEmpty(json);
            return false;
        }

        var problems = new List<Problem>();
        VisitFileReader.Read(root.Value, problems);
        foreach (var problem in problems)
        {
            Sound(problem, json);
        }

        return problems.Count == 0;
    }

    private static void Sound(Problem problem, string json)
    {
        problem.Where.ShouldNotBeNullOrEmpty(json);
        problem.Code.ShouldNotBeNullOrWhiteSpace(json);
        (problem.Message.EndsWith('.') || problem.Message.EndsWith('?')).ShouldBeTrue($"{problem.Where}: {problem.Message}\n{json}");
        problem.Message.Length.ShouldBeLessThan(900, problem.Message);
    }

    private static string SpoiledText(Random random)
    {
        var text = new StringBuilder(InventedVisit.Json);
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            var at = random.Next(text.Length);
            switch (random.Next(4))
            {
                case 0:
                    text.Remove(at, Math.Min(text.Length - at - 1, random.Next(1, 30)));
                    break;
                case 1:
                    text.Insert(at, Characters[random.Next(Characters.Length)]);
                    break;
                case 2:
                    text[at] = Characters[random.Next(Characters.Length)];
                    break;
                default:
                    text.Insert(at, text.ToString(at, Math.Min(text.Length - at, random.Next(1, 200))));
                    break;
            }
        }

        return text.ToString();
    }

    /// <summary>Replaces, renames, doubles or removes members anywhere in the tree.</summary>
    private static string SpoiledValues(Random random)
    {
        var root = JsonNode.Parse(InventedVisit.Json)!.AsObject();
        for (var changes = random.Next(0, 3); changes >= 0; changes--)
        {
            JsonNode at = root;
            for (var depth = random.Next(6); depth > 0; depth--)
            {
                var children = at switch
                {
                    JsonObject o => [.. o.Select(m => m.Value).OfType<JsonNode>().Where(n => n is JsonObject or JsonArray)],
                    JsonArray a => [.. a.OfType<JsonNode>().Where(n => n is JsonObject or JsonArray)],
                    _ => new List<JsonNode>(),
                };
                if (children.Count == 0)
                {
                    break;
                }

                at = children[random.Next(children.Count)];
            }

            Spoil(random, at);
        }

        return root.ToJsonString();
    }

    private static void Spoil(Random random, JsonNode at)
    {
        if (at is JsonArray { Count: > 0 } list)
        {
            var index = random.Next(list.Count);
            switch (random.Next(3))
            {
                case 0:
                    list.RemoveAt(index);
                    break;
                case 1:
                    list.Insert(index, list[index]?.DeepClone());
                    break;
                default:
                    list[index] = Strange[random.Next(Strange.Length)]();
                    break;
            }
        }
        else if (at is JsonObject { Count: > 0 } o)
        {
            var key = o.ElementAt(random.Next(o.Count)).Key;
            switch (random.Next(4))
            {
                case 0:
                    o.Remove(key);
                    break;
                case 1:
                    var value = o[key]?.DeepClone();
                    o.Remove(key);
                    o[key + (random.Next(2) == 0 ? "s" : "\u0000")] = value;
                    break;
                default:
                    o[key] = Strange[random.Next(Strange.Length)]();
                    break;
            }
        }
    }
}
