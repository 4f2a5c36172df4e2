using System.Net;
using System.Text.Json.Nodes;
using Trundle.Visits.Operations;

namespace Trundle.Web.Tests;

/// <summary>The interface's description of itself: each example is sent, and what comes back is what the description says.</summary>
public sealed class OpenApiTests : IAsyncLifetime
{
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync();

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Fact]
    public async Task Every_example_is_answered_as_it_says()
    {
        var (status, document) = await _bay.JsonAsync("/api/v1/openapi.json");
        status.ShouldBe(HttpStatusCode.OK);
        document["openapi"]!.GetValue<string>().ShouldBe("3.1.0");
        var sent = 0;
        foreach (var operation in OperationList.All)
        {
            var address = $"/api/v1/{operation.Name.Replace(' ', '/')}";
            var post = document["paths"]![address]!["post"]!;
            var body = post["requestBody"]!["content"]!["application/json"]!["example"];
            if (body is null)
            {
                // A recording is far longer than an example should be, and this one only prints the procedure that has one.
                operation.Name.ShouldBeOneOf("balance capture", "procedure print");
                continue;
            }

            var (answered, answer) = await _bay.PostAsync(address, body.ToJsonString());
            answered.ShouldBe(HttpStatusCode.OK, operation.Name);
            answer.ToJsonString().ShouldBe(post["responses"]!["200"]!["content"]!["application/json"]!["example"]!.ToJsonString(), operation.Name);
            sent++;
        }

        sent.ShouldBe(OperationList.All.Count - 2);
    }

    [Fact]
    public async Task Every_address_that_it_names_is_there_and_its_bodies_are_taken()
    {
        var (_, document) = await _bay.JsonAsync("/api/v1/openapi.json");
        var paths = document["paths"]!.AsObject();
        var opened = await _bay.PostAsync("/api/v1/visits", paths["/api/v1/visits"]!["post"]!["requestBody"]!["content"]!["application/json"]!["example"]!.ToJsonString());
        opened.Status.ShouldBe(HttpStatusCode.Created);
        var id = opened.Body["id"]!.GetValue<string>();
        var entries = await _bay.PostAsync($"/api/v1/visits/{id}/entries", paths["/api/v1/visits/{id}/entries"]!["post"]!["requestBody"]!["content"]!["application/json"]!["example"]!.ToJsonString());
        entries.Body["taken"]!.AsArray().Count.ShouldBe(1);
        foreach (var (address, methods) in paths)
        {
            if (methods!["get"] is not null)
            {
                (await _bay.GetAsync(address.Replace("{id}", id, StringComparison.Ordinal))).Status.ShouldBe(HttpStatusCode.OK, address);
            }
        }
    }

    [Fact]
    public async Task Its_references_lead_somewhere_and_each_parameter_of_an_address_is_told()
    {
        var (_, document) = await _bay.JsonAsync("/api/v1/openapi.json");
        var references = 0;
        Walk(document);
        references.ShouldBeGreaterThan(10);
        foreach (var (address, methods) in document["paths"]!.AsObject())
        {
            foreach (var (_, method) in methods!.AsObject())
            {
                var told = (method!["parameters"] as JsonArray ?? []).Where(p => p!["in"]!.GetValue<string>() == "path").Select(p => $"{{{p!["name"]}}}");
                told.ShouldBe(address.Split('/').Where(part => part.StartsWith('{')), address);
                method["responses"]!.AsObject().ShouldAllBe(r => r.Value!["description"] != null);
            }
        }

        void Walk(JsonNode? node)
        {
            if (node is JsonObject o)
            {
                if (o["$ref"] is JsonValue reference)
                {
                    references++;
                    JsonNode? at = document;
                    foreach (var part in reference.GetValue<string>().Split('/').Skip(1))
                    {
                        at = at![part];
                    }

                    at.ShouldNotBeNull(reference.GetValue<string>());
                }

                foreach (var (key, value) in o)
                {
                    if (key != "example")
                    {
                        Walk(value);
                    }
                }
            }
            else if (node is JsonArray list)
            {
                foreach (var item in list)
                {
                    Walk(item);
                }
            }
        }
    }
}
