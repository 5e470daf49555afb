using System.Text.Json.Nodes;
using Microsoft.Playwright;
using Xunit;

namespace PostFrame.BrowserTests;

/// <summary>
/// The board in a real browser over the whole product. Outside check: the building W1 worked by
/// hand (take-off reference, section 7) has 46 pieces on 8 rolls.
/// </summary>
public sealed class BoardPageTests(DeskBrowser browser, SingleHostProcess host)
    : IClassFixture<DeskBrowser>, IClassFixture<SingleHostProcess>, IAsyncDisposable
{
    private readonly List<IPage> _pages = [];

    private const string Hostile =
        "</td><script>document.title='x'</script><img src=x onerror=\"document.title='x'\">";

    [Fact]
    public async Task The_empty_board_fills_by_itself_and_says_when_it_is_cut_off()
    {
        var own = new SingleHostProcess();
        IPage page;
        try
        {
            await own.InitializeAsync();
            page = await OpenAsync(own);
            await FillsByItselfAsync(own, page);
        }
        finally
        {
            await own.DisposeAsync();
        }

        await page.WaitForSelectorAsync("[data-link=reconnecting]");
        Assert.Contains("Reconnecting", await page.TextContentAsync("#linkText"));

        // What it asked in vain is no trouble of the next test.
        await page.CloseAsync();
        browser.Troubles.Clear();
    }

    [Fact]
    public async Task A_plan_is_drawn_roll_by_roll_and_closing_it_leads_back_to_its_order()
    {
        var page = await OpenAsync(host);
        await OrderAsync(host, "PF-3002", "Cedar Bend Farm");
        var row = page.Locator("#rows tr", new() { HasText = "PF-3002" });
        await row.GetByText("Labelled").WaitForAsync(new() { Timeout = 30_000 });

        await row.Locator("th button").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForSelectorAsync("#detail[open] .roll");

        Assert.Equal(8, await page.Locator("#detail .roll").CountAsync());
        Assert.Equal(46, await page.Locator("#detail rect.piece").CountAsync());
        await DeskBrowser.Shoot(page, "board-plan");
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal("PF-3002", await page.EvaluateAsync<string>(
            "document.activeElement.textContent"));
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task On_a_phone_a_plan_and_the_table_of_its_cuts_stay_within_their_panel()
    {
        var page = await OpenAsync(host);
        await page.SetViewportSizeAsync(390, 844);
        await OrderAsync(host, "PF-3009", "Cedar Bend Farm");
        var row = page.Locator("#rows tr", new() { HasText = "PF-3009" });
        await row.GetByText("Labelled").WaitForAsync(new() { Timeout = 30_000 });
        await row.Locator("th button").ClickAsync();
        await page.ClickAsync("#detail details summary");
        await page.Locator(".cuts tbody tr").Last.ScrollIntoViewIfNeededAsync();

        await DeskBrowser.Shoot(page, "board-plan-phone");
        Assert.Contains("3 in faced glass-fibre blanket, white, 48 in wide: 8 rolls",
            await page.TextContentAsync("#detail"));
        Assert.Equal(0, await page.EvaluateAsync<int>(
            "(() => { const box = document.getElementById('detail');"
            + " return box.scrollWidth - box.clientWidth; })()"));
    }

    [Fact]
    public async Task An_order_that_cannot_be_planned_says_why_and_can_be_tried_again()
    {
        var page = await OpenAsync(host);
        await OrderAsync(host, "PF-3003", "Long Acre Grain", width: "130 ft");
        var row = page.Locator("#rows tr", new() { HasText = "PF-3003" });
        await row.GetByText("Parked").WaitForAsync(new() { Timeout = 30_000 });

        Assert.Contains("longest roll", await row.TextContentAsync());
        Assert.DoesNotContain("all", await row.Locator("td").Nth(7).TextContentAsync());
        await row.Locator(".retry button").ClickAsync();
        await page.WaitForFunctionAsync(
            "() => document.getElementById('status').textContent.includes('taken up again')");
        await DeskBrowser.Shoot(page, "board-parked");
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task The_focus_stays_where_it_is_while_orders_come_and_move()
    {
        await OrderAsync(host, "PF-3004", "Two Oaks Dairy");
        var page = await OpenAsync(host);
        var button = page.Locator("#rows tr", new() { HasText = "PF-3004" }).Locator("th button");
        await button.FocusAsync();

        await OrderAsync(host, "PF-3005", "Stony Run Equestrian");
        await page.Locator("#rows tr", new() { HasText = "PF-3005" }).GetByText("Labelled")
            .WaitForAsync(new() { Timeout = 30_000 });

        Assert.Equal("PF-3004", await page.EvaluateAsync<string>(
            "document.activeElement.textContent"));
    }

    [Fact]
    public async Task Orders_are_found_by_text_and_all_come_back()
    {
        await OrderAsync(host, "PF-3006", "Quarry Road Workshop");
        var page = await OpenAsync(host);
        await page.Locator("#rows tr", new() { HasText = "PF-3006" }).WaitForAsync();
        await page.SetViewportSizeAsync(390, 844);
        await DeskBrowser.Shoot(page, "board-phone");
        Assert.Equal(390, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        await page.FillAsync("#search", "nowhere to be found");
        await page.WaitForSelectorAsync("#clear:not([hidden])");
        Assert.Equal(0, await page.Locator("#rows tr").CountAsync());
        await page.ClickAsync("#clear");
        await page.Locator("#rows tr", new() { HasText = "PF-3006" }).WaitForAsync();
    }

    [Fact]
    public async Task A_foreman_sees_what_each_choice_costs_and_chooses_one()
    {
        await OrderAsync(host, "PF-3007", "Two Oaks Dairy");
        await OrderAsync(host, "PF-3008", "Cedar Bend Farm");
        var page = await OpenAsync(host);
        foreach (var number in new[] { "PF-3007", "PF-3008" })
        {
            await page.Locator("#rows tr", new() { HasText = number }).GetByText("Labelled")
                .WaitForAsync(new() { Timeout = 30_000 });
        }

        await page.ClickAsync("#shift summary");
        await page.Locator("#shiftRows tr").First.WaitForAsync(new() { Timeout = 60_000 });
        Assert.Contains("One plane at a time1", await page.TextContentAsync("#shiftRows"));
        Assert.Contains("Each order by itself", await page.TextContentAsync("#shiftRows"));
        Assert.Contains("least", await page.Locator("#shiftRows tr").Last.TextContentAsync());
        await DeskBrowser.Shoot(page, "board-shift");
        await ChooseAsync(page, page.Locator("#shiftRows button").Last);
        await PlannedAsync(2, "PF-3007", "PF-3008");

        await page.ClickAsync("#compareShift");
        await page.WaitForSelectorAsync("#compareShift:not([disabled])");
        var planes = page.Locator("#shiftRows tr", new() { HasText = "One plane at a time" });
        var rolls = await planes.Locator("td").Nth(1).TextContentAsync();
        Assert.Matches("^[1-9][0-9]*$", rolls);
        await ChooseAsync(page, planes.GetByRole(AriaRole.Button));
        await PlannedAsync(3, "PF-3007", "PF-3008");
        await page.Locator("#rows tr", new() { HasText = "PF-3007" })
            .Locator("th button").ClickAsync();
        await page.GetByText("One plane at a time was chosen").WaitForAsync();
        await DeskBrowser.Shoot(page, "board-one-plane");
        Assert.Empty(browser.Troubles);
    }

    private static async Task ChooseAsync(IPage page, ILocator button)
    {
        await button.ClickAsync();
        await page.WaitForFunctionAsync(
            "() => document.getElementById('shiftNote').textContent.includes('planned anew')");
    }

    private async Task PlannedAsync(int planNumber, params string[] orders)
    {
        using var http = new HttpClient { BaseAddress = host.Address };
        using var late = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        foreach (var order in orders)
        {
            var path = new Uri($"/v1/cutting/plans/{order}", UriKind.Relative);
            JsonNode? plan = null;
            while ((int?)plan?["planNumber"] != planNumber)
            {
                await tick.WaitForNextTickAsync(late.Token);
                using var answer = await http.GetAsync(path, late.Token);
                plan = JsonNode.Parse(await answer.Content.ReadAsStringAsync(late.Token));
            }
        }
    }

    private async Task FillsByItselfAsync(SingleHostProcess own, IPage page)
    {
        await page.WaitForSelectorAsync("#empty:not([hidden])");
        await DeskBrowser.Shoot(page, "board-empty");

        await OrderAsync(own, "PF-3001", Hostile);
        await page.Locator("#rows tr", new() { HasText = "Labelled" })
            .WaitForAsync(new() { Timeout = 30_000 });

        Assert.Equal(Hostile, await page.TextContentAsync("#rows td.name"));
        Assert.Equal(0, await page.Locator("#rows script, #rows img").CountAsync());
        Assert.Equal("Operations board", await page.TitleAsync());
        Assert.Empty(browser.Troubles);
    }

    /// <summary>
    /// A page left open follows its order, and asks for its plan just when the next test has it
    /// planned anew.
    /// </summary>
    public async ValueTask DisposeAsync()
    {
        foreach (var page in _pages)
        {
            await page.CloseAsync();
        }
    }

    private async Task<IPage> OpenAsync(SingleHostProcess at)
    {
        var page = await browser.OpenAsync(address: at.Address);
        _pages.Add(page);
        await page.GotoAsync(new Uri(at.Address, "/board/").ToString());
        await page.WaitForSelectorAsync("[data-link=live]");
        return page;
    }

    private static async Task OrderAsync(
        SingleHostProcess at, string number, string shipTo, string width = "30 ft")
    {
        var order = JsonNode.Parse(await File.ReadAllTextAsync(
            Example(), TestContext.Current.CancellationToken))!;
        order["orderNumber"] = number;
        order["shipTo"]!["name"] = shipTo;
        order["building"]!["width"] = width;
        using var http = new HttpClient { BaseAddress = at.Address };
        using var content = new StringContent(
            order.ToJsonString(), System.Text.Encoding.UTF8, "application/json");
        content.Headers.Add("Idempotency-Key", number);
        using var answer = await http.PostAsync(
            "/v1/orders", content, TestContext.Current.CancellationToken);
        Assert.True(
            answer.IsSuccessStatusCode,
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static string Example()
    {
        var folder = AppContext.BaseDirectory;
        while (!Directory.Exists(Path.Combine(folder, "contracts", "examples")))
        {
            folder = Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("contracts/examples is nowhere above.");
        }

        return Path.Combine(folder, "contracts", "examples", "w1-plain-gable.order.json");
    }
}
