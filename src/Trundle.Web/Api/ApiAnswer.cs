using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Web.Api;

/// <summary>The forms in which the HTTP interface reads and answers: the same JSON as the command's.</summary>
internal static class ApiAnswer
{
    /// <summary>The most bytes that a body may have: a file's most characters, each of up to three bytes.</summary>
    public const long MostBytes = 3L * FileNode.MostCharacters;

    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A JSON object, 200 unless told otherwise.</summary>
    public static IResult Json(JsonObject body, int status = StatusCodes.Status200OK) =>
        Results.Text(body.ToJsonString(Plain), "application/json", Encoding.UTF8, status);

    /// <summary>The contract's error object; 400 unless told otherwise.</summary>
    public static IResult Wrong(Problem problem, int status = StatusCodes.Status400BadRequest) => Json(ErrorBody(problem), status);

    /// <summary>The contract's error object.</summary>
    public static JsonObject ErrorBody(Problem problem) => new()
    {
        ["error"] = new JsonObject { ["code"] = problem.Code, ["where"] = problem.Where, ["message"] = problem.Message },
    };

    /// <summary>Reads the body as strictly as the command reads a file.</summary>
    public static async Task<Reading<FileNode>> BodyAsync(HttpRequest request)
    {
        if (!request.HasJsonContentType())
        {
            return Reading<FileNode>.Failed(new Problem("content-type", "not-json", "Send the body as application/json."));
        }

        using var memory = new MemoryStream();
        await request.Body.CopyToAsync(memory, request.HttpContext.RequestAborted).ConfigureAwait(false);
        var bytes = memory.ToArray();
        try
        {
            var text = new UTF8Encoding(false, true).GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);
            return FileNode.Parse(text, "body");
        }
        catch (DecoderFallbackException e)
        {
            return Reading<FileNode>.Failed(new Problem("body", "not-unicode", $"Byte {e.Index + 1} is not UTF-8; send the body as UTF-8."));
        }
    }

    /// <summary>The status that fits a problem with a body.</summary>
    public static int StatusOf(Problem problem) => problem.Code == "not-json" ? StatusCodes.Status415UnsupportedMediaType : StatusCodes.Status400BadRequest;
}
