using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>What a person's hand does on a bay page: opens a place, enters a field, waits until the server has it.</summary>
internal sealed class BayHand(Bay bay, IPage page, string visit)
{
    public async Task GoAsync(string place)
    {
        await page.GotoAsync($"/bay/{visit}/{place}");
        await OpenedAsync(page);
    }

    /// <summary>Waits until the engine is loaded and the visit is read: the bay's own page stands there.</summary>
    public static async Task OpenedAsync(IPage page)
    {
        var gone = new LocatorWaitForOptions { State = WaitForSelectorState.Detached };
        await page.GetByText("The bay is opening").WaitForAsync(gone);
        await page.GetByText("Opening the visit").WaitForAsync(gone);
        await page.Locator("main h1").First.WaitForAsync();
    }

    /// <summary>Enters each field on the page that is open, in order.</summary>
    public async Task EnterAsync(params (string Field, string Value)[] entries)
    {
        foreach (var (field, value) in entries)
        {
            var id = $"f-{field.Replace('.', '-').Replace('@', '-')}";
            var control = page.Locator($"[id='{id}']");
            await control.First.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
            switch (await control.First.EvaluateAsync<string>("e => e.tagName.toLowerCase() + ':' + (e.type ?? '')"))
            {
                case "fieldset:fieldset":
                    await control.Locator($"input[type=radio][value='{value}']").CheckAsync();
                    break;
                case "input:checkbox":
                    await control.SetCheckedAsync(value == "true");
                    break;
                case "select:select-one":
                    await control.SelectOptionAsync(value);
                    break;
                default:
                    await control.FillAsync(value);
                    await control.BlurAsync();
                    break;
            }
        }
    }

    /// <summary>Touches the step's own button under the thumb.</summary>
    public Task TouchAsync(string words) => page.Locator(".next").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = words }).First.ClickAsync();

    /// <summary>Asks the page again and again until a function that takes its time says true.</summary>
    public static async Task UntilAsync(IPage page, string function, string? argument = null)
    {
        for (var i = 0; i < 240; i++)
        {
            if (await page.EvaluateAsync<bool>(function, argument))
            {
                return;
            }

            await Task.Delay(250);
        }

        throw new TimeoutException($"The page never said true to {function}");
    }

    /// <summary>Enters a field, or touches the button of that name where no field is told.</summary>
    public async Task TakeAsync(string? field, string value)
    {
        if (field is not null)
        {
            await EnterAsync((field, value));
            return;
        }

        // A wheel that was left within its stages asks first; here nothing was moved.
        var asked = page.Locator(".next").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Nothing was moved" });
        var wanted = page.Locator(".next").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = value }).First;
        await asked.Or(wanted).First.WaitForAsync();
        if (await asked.CountAsync() > 0)
        {
            await asked.ClickAsync();
        }

        // The button of one fixing gives way to that of the next.
        var words = await wanted.InnerTextAsync();
        await wanted.ClickAsync();
        if (value.StartsWith("Stage ", StringComparison.Ordinal))
        {
            await Assertions.Expect(page.Locator(".next").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = words, Exact = true })).ToHaveCountAsync(0);
        }
    }

    /// <summary>Goes to another place of the open visit as a tap does, with nothing loaded anew: it works with no network.</summary>
    public async Task TapToAsync(string place)
    {
        var address = $"/bay/{visit}/{place}";
        await page.EvaluateAsync("address => { if (location.pathname !== address) { document.activeElement?.blur(); Blazor.navigateTo(address); } }", address);
        await page.WaitForFunctionAsync("address => location.pathname === address && document.activeElement?.tagName === 'H1'", address);
    }

    /// <summary>What the hand has done so far, leg by leg: ways to a place or a field, acts that record something, keys. Every tap and every key is counted here and nowhere else.</summary>
    public SortedDictionary<string, (int Ways, int Acts, int Keys)> Counted { get; } = new(StringComparer.Ordinal);

    /// <summary>One tap, as a finger does it: on what can be seen.</summary>
    public async Task TapAsync(ILocator what)
    {
        await what.WaitForAsync();
        var way = await what.EvaluateAsync<bool>("e => e.tagName === 'A' || e.type === 'text'");
        Count(way ? (1, 0, 0) : (0, 1, 0));
        await what.ClickAsync();
    }

    /// <summary>Keys typed where the focus stands, one after the other; Enter counts as a way.</summary>
    public async Task TypeAsync(string keys)
    {
        foreach (var key in keys)
        {
            Count(key == '\n' ? (1, 0, 0) : (0, 0, 1));
            await page.Keyboard.PressAsync(key == '\n' ? "Enter" : key.ToString());
        }
    }

    private void Count((int Ways, int Acts, int Keys) more)
    {
        var leg = new Uri(page.Url).AbsolutePath.Split('/')[3];
        var (ways, acts, keys) = Counted.GetValueOrDefault(leg);
        Counted[leg] = (ways + more.Ways, acts + more.Acts, keys + more.Keys);
    }

    /// <summary>Waits until the workshop's computer has a field.</summary>
    public async Task SentAsync(string field)
    {
        for (var i = 0; i < 120; i++)
        {
            if ((await bay.JsonAsync($"/api/v1/visits/{visit}"))["fields"]![field] is not null)
            {
                return;
            }

            await Task.Delay(250);
        }

        throw new TimeoutException($"'{field}' did not reach the server.");
    }
}
