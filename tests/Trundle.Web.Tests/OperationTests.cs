using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Tests;

/// <summary>The HTTP interface answers what the operation answers: the same body, the same keys, the same errors.</summary>
public sealed class OperationTests : IAsyncLifetime
{
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync();

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    public static TheoryData<string> Names => [.. OperationList.All.Select(o => o.Name)];

    [Theory, MemberData(nameof(Names))]
    public async Task An_address_answers_what_its_operation_answers(string name)
    {
        var operation = OperationList.All.Single(o => o.Name == name);
        foreach (var body in Bodies(operation))
        {
            var (status, answer) = await _bay.PostAsync($"/api/v1/{name.Replace(' ', '/')}", body);
            var expected = FileNode.Parse(body, "body").Then(operation.Run);
            if (expected.IsRead)
            {
                status.ShouldBe(HttpStatusCode.OK, body);
                JsonNode.DeepEquals(answer, expected.Value.Body).ShouldBeTrue($"{name} answers {answer} for {body}");
            }
            else
            {
                status.ShouldBe(HttpStatusCode.BadRequest, body);
                var error = answer["error"]!;
                error["code"]!.GetValue<string>().ShouldBe(expected.Problem!.Code);
                error["where"]!.GetValue<string>().ShouldBe(expected.Problem.Where);
                error["message"]!.GetValue<string>().ShouldBe(expected.Problem.Message);
            }
        }
    }

    [Fact]
    public async Task A_marking_is_read_by_HTTP()
    {
        var (status, answer) = await _bay.PostAsync("/api/v1/sidewall", """{"marking":"205/55 R16 91V"}""");
        status.ShouldBe(HttpStatusCode.OK);
        answer["service"]!["loadIndexSingle"]!.GetValue<int>().ShouldBe(91);
        answer["service"]!["loadSingleKilograms"]!.GetValue<double>().ShouldBe(615);
    }

    [Theory]
    [InlineData("{", "json-syntax", "body:1:2")]
    [InlineData("[]", "not-an-object", "body:1:1")]
    [InlineData("", "file-empty", "body:1:1")]
    [InlineData("{\"marking\":\"205/55 R16 91V\",\"markin\":1}", "key-unknown", "markin")]
    public async Task A_wrong_body_is_told_with_its_place(string body, string code, string where)
    {
        var (status, answer) = await _bay.PostAsync("/api/v1/sidewall", body);
        status.ShouldBe(HttpStatusCode.BadRequest);
        answer["error"]!["code"]!.GetValue<string>().ShouldBe(code);
        answer["error"]!["where"]!.GetValue<string>().ShouldBe(where);
    }

    [Fact]
    public async Task Bytes_that_are_no_UTF8_and_bodies_that_are_no_JSON_are_refused()
    {
        using var bytes = new ByteArrayContent([.. "{\"marking\":\""u8, 0xff, .. "\"}"u8]);
        bytes.Headers.ContentType = new("application/json");
        using var first = await _bay.Client.PostAsync(new Uri("/api/v1/sidewall", UriKind.Relative), bytes);
        first.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await first.Content.ReadAsStringAsync()).ShouldContain("not-unicode");

        using var form = new StringContent("marking=205/55 R16 91V", Encoding.UTF8, "application/x-www-form-urlencoded");
        using var second = await _bay.Client.PostAsync(new Uri("/api/v1/sidewall", UriKind.Relative), form);
        second.StatusCode.ShouldBe(HttpStatusCode.UnsupportedMediaType);
        (await second.Content.ReadAsStringAsync()).ShouldContain("not-json");
    }

    /// <summary>Nothing, something unknown, and the samples: each is right for some operations and wrong for others.</summary>
    private static IEnumerable<string> Bodies(Operation operation)
    {
        yield return "{}";
        yield return """{"nothing like it": 1}""";
        if (operation.ArgumentKey is { } key)
        {
            yield return new JsonObject { [key] = "195/65 R15 91H" }.ToJsonString();
        }

        foreach (var file in Directory.EnumerateFiles(Path.Combine(Root(), "samples"), "*.json").Order(StringComparer.Ordinal))
        {
            yield return File.ReadAllText(file);
        }
    }

    internal static string Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Trundle.slnx")))
        {
            at = at.Parent!;
        }

        return at.FullName;
    }
}
