using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.JSInterop;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests;

/// <summary>A page of the bay on a browser and a host that stand for the real ones.</summary>
public abstract class BayContext : BunitContext
{
    internal static readonly Guid VisitId = new("01920000-0000-7000-8000-000000000001");

    internal FakeBrowser Browser { get; } = new();

    protected BayContext()
    {
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton<IJSRuntime>(Browser);
        Services.AddSingleton<Browser>();
        Services.AddSingleton<Outbox>();
        Services.AddSingleton<OpenVisit>();
    }

    internal OpenVisit Visit => Services.GetRequiredService<OpenVisit>();

    internal IRenderedComponent<BayPage> Page(Leg leg, string? place = null, string? step = null) => Render<BayPage>(p => p
        .Add(x => x.Id, VisitId)
        .Add(x => x.LegKey, leg.Key())
        .Add(x => x.Place, place)
        .Add(x => x.Step, step));

    /// <summary>The control of a field on a page.</summary>
    internal static AngleSharp.Dom.IElement Control(IRenderedComponent<IComponent> page, string field) => page.Find($"#{FieldPart.IdOf(field)}");
}
