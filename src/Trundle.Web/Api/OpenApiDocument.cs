using System.Text;
using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Api;

/// <summary>
/// The interface's description of itself by OpenAPI 3.1: every operation with an example body and the answer that this very program gives to it, so that no
/// example can differ from what is answered; and the addresses of visits. What a key means stands in the guides, once.
/// </summary>
internal static class OpenApiDocument
{
    private static readonly Lazy<string> Made = new(() => Make().ToJsonString());

    /// <summary>The document as JSON; made when it is first asked for.</summary>
    public static string Text => Made.Value;

    /// <summary>The example body of an operation, or null where there is none.</summary>
    public static string? Example(string operation)
    {
        using var stream = typeof(OpenApiDocument).Assembly.GetManifestResourceStream($"example-{operation.Replace(' ', '-')}.json");
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    private static JsonObject Make()
    {
        var paths = new JsonObject();
        foreach (var operation in OperationList.All)
        {
            paths[Address(operation)] = new JsonObject { ["post"] = Post(operation) };
        }

        foreach (var (address, method, summary, parameters, body, answer) in Addresses)
        {
            var at = paths[address] as JsonObject ?? [];
            at[method] = new JsonObject
            {
                ["tags"] = new JsonArray("the workshop's record"),
                ["summary"] = summary,
                ["parameters"] = new JsonArray([.. parameters.Select(p => (JsonNode?)Parameter(p, address.Contains($"{{{p}}}", StringComparison.Ordinal)))]),
                ["responses"] = new JsonObject { ["200"] = new JsonObject { ["description"] = answer }, ["401"] = Wrong("Nobody is signed in on this device."), ["404"] = Wrong("There is no such visit.") },
            };
            if (body is not null)
            {
                at[method]!["requestBody"] = new JsonObject { ["required"] = true, ["content"] = new JsonObject { ["application/json"] = new JsonObject { ["schema"] = Any(), ["example"] = JsonNode.Parse(body) } } };
            }

            paths[address] = at;
        }

        return new JsonObject
        {
            ["openapi"] = "3.1.0",
            ["info"] = new JsonObject
            {
                ["title"] = "Trundle",
                ["version"] = Trundle.Engine.EngineVersion.Engine,
                ["description"] = "The same bodies and answers as the command's. Quantities in a body are texts with their unit (\"2.3 bar\") or bare numbers in the unit that the guide names; numbers in an answer have the unit at the end of their key. "
                    + "Computations hold nothing of the workshop and need no sign-in. A maker's data, local codes and licensed practice come before any figure here; cautions stand beside the answer that they belong to.",
            },
            ["paths"] = paths,
            ["components"] = new JsonObject
            {
                ["schemas"] = new JsonObject
                {
                    ["Error"] = new JsonObject
                    {
                        ["type"] = "object",
                        ["required"] = new JsonArray("error"),
                        ["properties"] = new JsonObject
                        {
                            ["error"] = new JsonObject
                            {
                                ["type"] = "object",
                                ["required"] = new JsonArray("code", "where", "message"),
                                ["properties"] = new JsonObject { ["code"] = Text_(), ["where"] = Text_(), ["message"] = Text_() },
                            },
                        },
                    },
                },
            },
        };
    }

    /// <summary>The addresses that are no operation: what they are asked with, and what they answer.</summary>
    private static IReadOnlyList<(string Address, string Method, string Summary, string[] Parameters, string? Body, string Answer)> Addresses { get; } =
    [
        ("/api/v1/visits", "get", "Every visit whose vehicle is in the workshop.", [], null, "Their headings."),
        ("/api/v1/visits", "post", "Opens a visit; the body may bring its identifier and its first entries. The same identifier opens it once.", [],
            """{"id": "01920000-0000-7000-8000-000000000001", "by": "T1", "entries": [{"id": "01920000-0000-7000-8000-000000000002", "field": "vehicle.name", "typed": "Grey van", "by": "T1", "at": "2026-03-14T08:52:00.000Z", "after": []}]}""", "The visit (status 201)."),
        ("/api/v1/visits/{id}", "get", "A visit: the newest text of each field, and its entries after a sequence number.", ["id", "since"], null, "The visit."),
        ("/api/v1/visits/{id}/entries", "post", "Adds entries. Each identifier is taken once; one that may not stand is refused by itself, with the reason.", ["id"],
            """{"entries": [{"id": "01920000-0000-7000-8000-000000000003", "field": "vehicle.odometer", "typed": "48200 km", "by": "T1", "at": "2026-03-14T08:53:00.000Z", "after": []}]}""", "What was taken, what was there already, what was refused, and what the workshop added."),
        ("/api/v1/visits/{id}/file.json", "get", "The visit's file, as the command reads it.", ["id"], null, "The file."),
        ("/api/v1/visits/{id}/sheet.pdf", "get", "The visit's sheet.", ["id", "for", "paper"], null, "A PDF."),
        ("/api/v1/people", "get", "Who may enter on this device, and who enters now.", [], null, "The people."),
        ("/api/v1/condemned", "get", "The register of condemned tyres and wheels.", [], null, "Its lines that stand."),
    ];

    private static string Address(Operation operation) => $"/api/v1/{operation.Name.Replace(' ', '/')}";

    private static JsonObject Post(Operation operation)
    {
        var content = new JsonObject { ["schema"] = Any() };
        var answer = new JsonObject { ["schema"] = Any() };
        if (Example(operation.Name) is { } example)
        {
            content["example"] = JsonNode.Parse(example);
            operation.Run(FileNode.Parse(example, "body").Value).Match<object?>(a => answer["example"] = a.Body.DeepClone(), problem => throw new InvalidOperationException($"The example of {operation.Name}: {problem}"));
        }

        return new JsonObject
        {
            ["tags"] = new JsonArray("computations"),
            ["operationId"] = operation.Name.Replace(' ', '-'),
            ["summary"] = operation.About,
            ["requestBody"] = new JsonObject { ["required"] = true, ["content"] = new JsonObject { ["application/json"] = content } },
            ["responses"] = new JsonObject
            {
                ["200"] = new JsonObject { ["description"] = "The answer.", ["content"] = new JsonObject { ["application/json"] = answer } },
                ["400"] = Wrong("The body is wrong; one message names the place."),
                ["415"] = Wrong("The body is not JSON."),
            },
        };
    }

    private static JsonObject Parameter(string name, bool inPath) => new()
    {
        ["name"] = name,
        ["in"] = inPath ? "path" : "query",
        ["required"] = inPath,
        ["schema"] = name switch
        {
            "id" => new JsonObject { ["type"] = "string", ["format"] = "uuid" },
            "since" => new JsonObject { ["type"] = "integer", ["minimum"] = 0 },
            "for" => new JsonObject { ["type"] = "string", ["enum"] = new JsonArray("customer", "file") },
            "paper" => new JsonObject { ["type"] = "string", ["enum"] = new JsonArray("a4", "letter") },
            _ => Text_(),
        },
    };

    private static JsonObject Wrong(string description) => new()
    {
        ["description"] = description,
        ["content"] = new JsonObject { ["application/json"] = new JsonObject { ["schema"] = new JsonObject { ["$ref"] = "#/components/schemas/Error" } } },
    };

    private static JsonObject Any() => new() { ["type"] = "object" };

    private static JsonObject Text_() => new() { ["type"] = "string" };
}
