using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Practice;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Practice;

/// <summary>
/// Hands attempts to the workshop: what was done, and who did it. With no network they wait on this device, and leave it only while the same person enters here.
/// </summary>
public static class PracticeKeeping
{
    /// <summary>Under which name attempts wait on this device.</summary>
    public const string Name = "trundle-practice";

    private const int Most = 200;

    /// <summary>Keeps an attempt.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="attempt">What was done.</param>
    /// <returns>What became of it, in a sentence.</returns>
    public static async Task<string> KeepAsync(Browser browser, PracticeAttempt attempt)
    {
        ArgumentNullException.ThrowIfNull(browser);
        ArgumentNullException.ThrowIfNull(attempt);
        if ((await People.AskAsync(browser))?.Me is not { } me)
        {
            return "Not kept: nobody has said who enters here.";
        }

        var waiting = await WaitingAsync(browser);
        var id = Guid.NewGuid().ToString("D");
        waiting.Add(new JsonObject
        {
            ["by"] = me.Id,
            ["body"] = new JsonObject
            {
                ["id"] = id,
                ["kind"] = attempt.Kind,
                ["seed"] = attempt.Seed,
                ["day"] = attempt.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                ["acts"] = new JsonArray([.. attempt.Acts.Select(a => (JsonNode?)a)]),
            },
        });
        while (waiting.Count > Most)
        {
            waiting.RemoveAt(0);
        }

        var (left, refused) = await SendAsync(browser, waiting, me.Id);
        var kept = await browser.RememberAsync(Name, left.Count == 0 ? null : left.ToJsonString());
        return refused.GetValueOrDefault(id) is { } problem ? $"Not kept: {problem}"
            : !left.Any(a => a!["body"]!["id"]!.GetValue<string>() == id) ? $"Kept in the roll, for {me.Name}."
            : kept ? $"Kept on this device for {me.Name}, until the workshop’s computer answers." : "Not kept: this browser keeps nothing, and the workshop’s computer does not answer.";
    }

    /// <summary>Sends what waits of whoever enters now.</summary>
    /// <returns>How many attempts still wait.</returns>
    public static async Task<int> SendWaitingAsync(Browser browser)
    {
        ArgumentNullException.ThrowIfNull(browser);
        // Asked in any case, so that with no network this device still knows who enters here.
        var people = await People.AskAsync(browser);
        var waiting = await WaitingAsync(browser);
        if (waiting.Count == 0 || people?.Me is not { } me)
        {
            return waiting.Count;
        }

        var (left, _) = await SendAsync(browser, waiting, me.Id);
        await browser.RememberAsync(Name, left.Count == 0 ? null : left.ToJsonString());
        return left.Count;
    }

    private static async Task<JsonArray> WaitingAsync(Browser browser)
    {
        try
        {
            return await browser.RecallAsync(Name) is { } text && JsonNode.Parse(text) is JsonArray waiting ? waiting : [];
        }
        catch (System.Text.Json.JsonException)
        {
            return [];
        }
    }

    /// <summary>What is left once everything of one person was tried, and what the host would not take.</summary>
    private static async Task<(JsonArray Left, Dictionary<string, string> Refused)> SendAsync(Browser browser, JsonArray waiting, int me)
    {
        var left = new JsonArray();
        var refused = new Dictionary<string, string>(StringComparer.Ordinal);
        var reached = true;
        foreach (var attempt in waiting.OfType<JsonObject>())
        {
            var sent = attempt["by"]?.GetValue<int>() == me && reached ? await browser.AskAsync("POST", "/api/v1/practice/attempts", attempt["body"]!.AsObject()) : null;
            reached &= sent is not { Status: 0 };
            if (sent is { Status: 400 })
            {
                // It will never be taken: it is not sent again.
                refused[attempt["body"]!["id"]!.GetValue<string>()] = sent.Body?["error"]?["message"]?.GetValue<string>() ?? "the workshop’s computer refused it.";
            }
            else if (sent is not { Good: true })
            {
                left.Add(attempt.DeepClone());
            }
        }

        return (left, refused);
    }
}
