using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The sample's whole visit in a store, signed and handed back.</summary>
internal static class HandedBackVisit
{
    /// <summary>Opens it some hours before and hands it back an hour before, with other texts in some fields.</summary>
    public static Guid In(WorkshopStore store, DateTimeOffset now, params IReadOnlyList<(string Field, string Typed)> over)
    {
        var id = Guid.CreateVersion7();
        store.Visits.Open(id, "T1", now.AddHours(-5), DateOnly.FromDateTime(now.DateTime));
        var fields = Sample().Where(f => f.Field != "work.number" && over.All(o => o.Field != f.Field) && !f.Field.StartsWith("work.handBack", StringComparison.Ordinal)).Concat(over).Append(("work.handBack.by", "T1"));
        foreach (var batch in fields.Select(f => new Entry(Guid.NewGuid(), f.Item1, f.Item2, "T1", Role.Technician, now.AddHours(-1))).Chunk(400))
        {
            store.Visits.Append(id, batch, now).Value.Refused.Select(r => r.Problem.Message).ShouldBeEmpty();
        }

        store.Visits.Find(id)!.Heading.HandedBackAt.ShouldNotBeNull();
        return id;
    }

    private static List<(string Field, string Typed)> Sample()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "samples", "visit-blue-hatchback.json")))
        {
            root = root.Parent!;
        }

        var fields = new List<(string, string)>();
        Walk("", JsonNode.Parse(File.ReadAllText(Path.Combine(root.FullName, "samples", "visit-blue-hatchback.json"))));
        return fields;

        void Walk(string path, JsonNode? node)
        {
            if (node is JsonObject members)
            {
                foreach (var (key, value) in members.Where(m => path.Length == 0 || m.Key is not ("position" or "by" or "role")))
                {
                    Walk(path.Length == 0 ? key : $"{path}.{key}", value);
                }
            }
            else if (node is JsonArray items)
            {
                for (var i = 0; i < items.Count; i++)
                {
                    var name = path == "fitted" ? items[i]!["position"]!.GetValue<string>() : (path.StartsWith("work.steps.", StringComparison.Ordinal) ? i + 1 : i).ToString(CultureInfo.InvariantCulture);
                    Walk($"{path}.{name}", items[i]);
                }
            }
            else if (node is JsonValue value)
            {
                fields.Add((path, value.TryGetValue<string>(out var text) ? text : value.ToJsonString()));
            }
        }
    }
}
