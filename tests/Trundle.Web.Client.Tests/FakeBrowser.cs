using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.JSInterop;
using Trundle.Engine.Practice;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests;

/// <summary>How the host behaves.</summary>
internal enum HostMood
{
    Answers,
    Down,

    /// <summary>It takes what is sent, and its answer is lost on the way.</summary>
    TakesAndAnswerIsLost,
    KnowsNoVisit,
    NobodySignedIn,
}

/// <summary>
/// Stands for wwwroot/js/bay.js: a store that outlives the page, and a host that takes an identifier once. Both can be handed to a second page,
/// as a reload or another device would find them.
/// </summary>
internal sealed class FakeBrowser : IJSRuntime, IJSObjectReference
{
    public List<JsonObject> Kept { get; init; } = [];

    public List<JsonObject> HostEntries { get; init; } = [];

    public HostMood Mood { get; set; } = HostMood.Answers;

    public bool Keeps { get; set; } = true;

    /// <summary>True where people sign in on the host, and the PIN is 8264.</summary>
    public bool SignIn { get; set; }

    public int? Me { get; set; } = 1;

    public Func<JsonObject, string?> Refuses { get; set; } = _ => null;

    /// <summary>What was asked of the browser and the host, in order.</summary>
    public List<string> Calls { get; } = [];

    public string[] Units { get; set; } = ["kPa", "mm", "N·m", "g"];

    /// <summary>The workshop's instruments, as they come with a visit.</summary>
    public JsonArray Instruments { get; set; } = [];

    /// <summary>What the last visit of the vehicle left due, or null.</summary>
    public JsonObject? ReTorqueBefore { get; set; }

    public string RoleWord { get; set; } = "technician";

    /// <summary>The register of condemned tyres and wheels on the host, and how often it was edited.</summary>
    public List<JsonObject> Register { get; init; } = [];

    public int RegisterEdition { get; set; }

    /// <summary>The field that the focus was put on last.</summary>
    public string? Settled { get; private set; }

    public ValueTask<TValue> InvokeAsync<TValue>(string identifier, object?[]? args) => InvokeAsync<TValue>(identifier, CancellationToken.None, args);

    public ValueTask<TValue> InvokeAsync<TValue>(string identifier, CancellationToken cancellationToken, object?[]? args)
    {
        var result = identifier switch
        {
            "import" => this,
            "keep" => Keep((string)args![0]!),
            "waiting" => new JsonObject { ["kept"] = Keeps, ["entries"] = new JsonArray([.. Kept.Select(e => (JsonNode?)e.DeepClone())]) }.ToJsonString(),
            "forget" => Forget((string)args![0]!),
            "refuse" => Refuse((string)args![0]!),
            "remember" => Remember((string)args![0]!, args[1] as string),
            "recall" => Remembered.GetValueOrDefault((string)args![0]!),
            "settle" => Settle(args![0] as string),
            "ask" => Ask((string)args![0]!, (string)args[1]!, args[2] as string),
            "know" => Know((string)args![0]!, (string)args[1]!),
            "known" => Known.GetValueOrDefault((string)args![0]!)?.ToJsonString() ?? "[]",
            "forgetAll" => ForgetAll(),
            "takePhoto" => TakePhoto((string)args![1]!, (string)args[2]!),
            "waitingPhotos" => new JsonArray([.. KeptPhotos.Select(p => (JsonNode?)p.DeepClone())]).ToJsonString(),
            "sendPhoto" => SendPhoto((string)args![0]!, (string)args[1]!),
            "forgetPhoto" => ForgetPhoto((string)args![0]!),
            _ => (object?)null,
        };
        return new ValueTask<TValue>(result is TValue value ? value : default!);
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    /// <summary>Puts entries on the host, as if another device had sent them.</summary>
    public void Enter(IEnumerable<(string Field, string Typed)> fields, DateTimeOffset at, string by = "T2", Role role = Role.Technician)
    {
        foreach (var (field, typed) in fields)
        {
            HostEntries.Add(new JsonObject
            {
                ["id"] = Guid.NewGuid().ToString("D"),
                ["field"] = field,
                ["typed"] = typed,
                ["by"] = by,
                ["role"] = role.Word(),
                ["at"] = at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture),
            });
        }
    }

    /// <summary>Condemns a name on another visit.</summary>
    public void Condemn(string kind, string name)
    {
        RegisterEdition++;
        Register.Add(new JsonObject
        {
            ["kind"] = kind, ["name"] = name, ["visitId"] = "01920000-0000-7000-8000-0000000000ff", ["visit"] = "26-0313-2",
            ["place"] = "fitted.1L", ["by"] = "I2", ["at"] = "2026-03-13T10:00:00.000Z",
        });
    }

    /// <summary>Photographs on this device that the host does not have.</summary>
    public List<JsonObject> KeptPhotos { get; init; } = [];

    /// <summary>The addresses at which the host has a photograph.</summary>
    public List<string> HostPhotos { get; init; } = [];

    /// <summary>Why the browser cannot take the next picture, or null.</summary>
    public string? PictureIsWrong { get; set; }

    /// <summary>Why the host will not take a photograph, or null.</summary>
    public string? PhotoRefused { get; set; }

    /// <summary>The shop's stock, as it comes with a visit.</summary>
    public JsonArray Stock { get; set; } = [];

    private string TakePhoto(string id, string visit)
    {
        Calls.Add("takePhoto");
        if (PictureIsWrong is { } wrong)
        {
            return new JsonObject { ["wrong"] = wrong }.ToJsonString();
        }

        KeptPhotos.Add(new JsonObject { ["id"] = id, ["visit"] = visit, ["preview"] = $"data:image/jpeg;base64,{id[..8]}" });
        return new JsonObject { ["kept"] = Keeps, ["preview"] = $"data:image/jpeg;base64,{id[..8]}" }.ToJsonString();
    }

    private string SendPhoto(string id, string address)
    {
        Calls.Add($"PUT {address}");
        if (Mood == HostMood.Down)
        {
            return Answer(0, "");
        }

        if (Mood == HostMood.NobodySignedIn)
        {
            return Answer(401, NotSignedIn);
        }

        if (PhotoRefused is { } why)
        {
            return Answer(400, new JsonObject { ["error"] = new JsonObject { ["code"] = "not-a-picture", ["where"] = "photo", ["message"] = why } }.ToJsonString());
        }

        HostPhotos.Add(address);
        ForgetPhoto(id);
        return Answer(200, "{}");
    }

    private object? ForgetPhoto(string id)
    {
        KeptPhotos.RemoveAll(p => p["id"]!.GetValue<string>() == id);
        return null;
    }

    /// <summary>The forms that this browser keeps, by name.</summary>
    public Dictionary<string, string> Remembered { get; init; } = new(StringComparer.Ordinal);

    /// <summary>How many characters it keeps under a name.</summary>
    public int Room { get; set; } = 5_000_000;

    /// <summary>What the host told of visits, as this browser keeps it.</summary>
    public Dictionary<string, JsonArray> Known { get; init; } = new(StringComparer.Ordinal);

    private object? Know(string visit, string json)
    {
        var kept = Known.TryGetValue(visit, out var there) ? there : Known[visit] = [];
        foreach (var entry in JsonNode.Parse(json)!.AsArray())
        {
            kept.Add(entry!.DeepClone());
        }

        return null;
    }

    private object? ForgetAll()
    {
        Known.Clear();
        return null;
    }

    private object Remember(string name, string? text)
    {
        if (text is null)
        {
            Remembered.Remove(name);
        }
        else if (Keeps && text.Length <= Room)
        {
            Remembered[name] = text;
        }

        return Keeps && (text?.Length ?? 0) <= Room;
    }

    private object? Settle(string? field)
    {
        Settled = field;
        return null;
    }

    private object Keep(string json)
    {
        Calls.Add("keep");
        if (Keeps)
        {
            Kept.AddRange(JsonNode.Parse(json)!.AsArray().Select(n => (JsonObject)n!.DeepClone()));
        }

        return Keeps;
    }

    private object? Forget(string json)
    {
        var ids = JsonNode.Parse(json)!.AsArray().Select(n => n!.GetValue<string>()).ToHashSet(StringComparer.Ordinal);
        Kept.RemoveAll(e => ids.Contains(e["id"]!.GetValue<string>()));
        return null;
    }

    private object? Refuse(string json)
    {
        foreach (var reason in JsonNode.Parse(json)!.AsArray())
        {
            foreach (var entry in Kept.Where(e => e["id"]!.GetValue<string>() == reason!["id"]!.GetValue<string>()))
            {
                entry["refused"] = reason!["message"]!.GetValue<string>();
            }
        }

        return null;
    }

    private string Ask(string method, string address, string? body)
    {
        Calls.Add($"{method} {address}");
        if (Mood == HostMood.Down)
        {
            return Answer(0, "");
        }

        if (Mood == HostMood.NobodySignedIn)
        {
            return Answer(401, NotSignedIn);
        }

        if (address == "/api/v1/people")
        {
            return Answer(200, new JsonObject { ["signIn"] = SignIn, ["people"] = new JsonArray(Person()), ["me"] = Me }.ToJsonString());
        }

        if (address.StartsWith("/api/v1/people/me", StringComparison.Ordinal))
        {
            if (SignIn && JsonNode.Parse(body!)!["pin"]?.GetValue<string>() is { } pin && pin != "8264")
            {
                return Answer(403, """{"error":{"code":"pin-wrong","where":"pin","message":"That is not the PIN."}}""");
            }

            Me = JsonNode.Parse(body!)!["id"]!.GetValue<int>();
            return Answer(200, Person()!.ToJsonString());
        }

        if (address == "/api/v1/condemned")
        {
            return Answer(200, new JsonObject { ["register"] = Edition, ["condemned"] = new JsonArray([.. Register.Select(l => (JsonNode?)l.DeepClone())]) }.ToJsonString());
        }

        if (address == "/api/v1/practice/attempts")
        {
            return Take(JsonNode.Parse(body!)!.AsObject());
        }

        if (Mood == HostMood.KnowsNoVisit)
        {
            return Answer(404, """{"error":{"code":"visit-unknown","where":"visit","message":"There is no such visit in this workshop."}}""");
        }

        if (method == "POST" && address.EndsWith("/entries", StringComparison.Ordinal))
        {
            return Append(JsonNode.Parse(body!)!.AsObject());
        }

        var since = int.Parse(address[(address.IndexOf('=', StringComparison.Ordinal) + 1)..], CultureInfo.InvariantCulture);
        return Answer(200, new JsonObject { ["entries"] = new JsonArray([.. HostEntries.Skip(since).Select(e => (JsonNode?)e.DeepClone())]), ["last"] = HostEntries.Count, ["register"] = Edition, ["instruments"] = Instruments.DeepClone(), ["stock"] = Stock.DeepClone(), ["reTorqueBefore"] = ReTorqueBefore?.DeepClone() }.ToJsonString());
    }

    /// <summary>The attempts in practice that the host took, by identifier.</summary>
    public Dictionary<string, PracticeAttempt> Attempts { get; } = [];

    /// <summary>Judges what was done, as the host does.</summary>
    private string Take(JsonObject sent)
    {
        var attempt = new PracticeAttempt(sent["kind"]!.GetValue<string>(), sent["seed"]!.GetValue<ulong>(), DateOnly.ParseExact(sent["day"]!.GetValue<string>(), "yyyy-MM-dd", CultureInfo.InvariantCulture), [.. sent["acts"]!.AsArray().Select(a => a!.GetValue<string>())]);
        if (PracticeAttempts.Judge(attempt).Problem is { } problem)
        {
            return Answer(400, new JsonObject { ["error"] = new JsonObject { ["code"] = problem.Code, ["where"] = problem.Where, ["message"] = problem.Message } }.ToJsonString());
        }

        Attempts[sent["id"]!.GetValue<string>()] = attempt;
        return Answer(200, "{}");
    }

    private const string NotSignedIn = """{"error":{"code":"sign-in-needed","where":"sign-in","message":"Nobody is signed in on this device."}}""";

    private string Edition => RegisterEdition.ToString(CultureInfo.InvariantCulture);

    private string Append(JsonObject body)
    {
        var (taken, already, refused) = (new JsonArray(), new JsonArray(), new JsonArray());
        foreach (var entry in body["entries"]!.AsArray().Select(e => (JsonObject)e!.DeepClone()))
        {
            var id = entry["id"]!.GetValue<string>();
            if (HostEntries.Any(e => e["id"]!.GetValue<string>() == id))
            {
                already.Add(id);
            }
            else if (Refuses(entry) is { } why)
            {
                refused.Add((JsonNode)new JsonObject { ["id"] = id, ["error"] = new JsonObject { ["code"] = "no", ["where"] = "x", ["message"] = why } });
            }
            else
            {
                entry["role"] = RoleWord;
                HostEntries.Add(entry);
                taken.Add(id);
            }
        }

        return Mood == HostMood.TakesAndAnswerIsLost
            ? Answer(0, "")
            : Answer(200, new JsonObject { ["taken"] = taken, ["already"] = already, ["refused"] = refused, ["added"] = new JsonArray() }.ToJsonString());
    }

    private JsonObject Person() => new()
    {
        ["id"] = 1,
        ["name"] = "T2",
        ["role"] = RoleWord,
        ["pin"] = SignIn,
        ["units"] = new JsonObject { ["pressure"] = Units[0], ["depth"] = Units[1], ["torque"] = Units[2], ["mass"] = Units[3] },
    };

    private static string Answer(int status, string text) => new JsonObject { ["status"] = status, ["text"] = text }.ToJsonString();
}
