using System.Text.Json.Nodes;

namespace Trundle.Web.Client.Tools;

/// <summary>Parts of an answer whose form is the contract's: a part that is not there is a mistake in the page.</summary>
public static class AnswerParts
{
    /// <summary>A text.</summary>
    public static string Words(this JsonNode? node) => node!.GetValue<string>();

    /// <summary>A number.</summary>
    public static double Number(this JsonNode? node) => node!.GetValue<double>();

    /// <summary>A whole number.</summary>
    public static int Whole(this JsonNode? node) => node!.GetValue<int>();

    /// <summary>Yes, no, or not told.</summary>
    public static bool? Flag(this JsonNode? node) => node?.GetValue<bool>();

    /// <summary>The texts of a list; none where it is not there.</summary>
    public static IReadOnlyList<string> AllWords(this JsonNode? node) => [.. (node as JsonArray ?? []).Select(n => n.Words())];

    /// <summary>The objects of a list; none where it is not there.</summary>
    public static IReadOnlyList<JsonObject> Each(this JsonNode? node) => [.. (node as JsonArray ?? []).OfType<JsonObject>()];
}
