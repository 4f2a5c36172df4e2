using System.Text;
using System.Text.Json.Nodes;

namespace Trundle.Visits.Tests.Files;

/// <summary>Spoils a sound JSON file by a seeded chance: in its text, or in the values and keys of its tree.</summary>
internal static class Spoiled
{
    private const string Characters = "{}[]\",:0123456789.eE+-truefalsn \\/\u0000\u001f\u00a0\ud83d\udeab½²߀x\n\t\ufeff";

    private static readonly Func<JsonNode?>[] Strange =
    [
        () => null, () => JsonValue.Create(true), () => JsonValue.Create(-1), () => JsonValue.Create(1e300), () => JsonValue.Create(0.1), () => JsonValue.Create(""),
        () => JsonValue.Create(" "), () => JsonValue.Create("1,234 kPa"), () => JsonValue.Create("6/32"), () => JsonValue.Create("\u07c0\u07c1 mm"), () => JsonValue.Create("\ud83d\udeab"),
        () => new JsonArray(), () => new JsonObject(), () => new JsonArray(new JsonArray(new JsonArray())), () => JsonValue.Create(new string('9', 400)),
        () => JsonValue.Create("M1\u07c0x1.5"), () => JsonValue.Create("205/55R"), () => JsonValue.Create("9L"), () => JsonValue.Create("2Lo"), () => JsonValue.Create("9999-99-99"),
        () => JsonValue.Create("NaN"), () => JsonValue.Create("5 x 112 mm"), () => JsonValue.Create("-300 °C"), () => new JsonObject { ["value"] = 3, ["value "] = "x" },
    ];

    /// <summary>A file with a few characters taken out, put in, changed or doubled.</summary>
    public static string Text(Random random, string json)
    {
        var text = new StringBuilder(json);
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
    public static string Values(Random random, string json)
    {
        var root = JsonNode.Parse(json)!.AsObject();
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
