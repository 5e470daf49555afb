using Microsoft.Playwright;
using Xunit;

namespace PostFrame.BrowserTests;

public sealed class OrderFromDesk(DeskBrowser browser, SingleHostProcess host)
    : IClassFixture<DeskBrowser>, IClassFixture<SingleHostProcess>
{
    [Fact]
    public async Task The_building_on_show_is_ordered_and_its_labels_come_back()
    {
        var page = await browser.OpenAsync(address: host.Address);
        await Fill(page, "PF-2001", "2026-12-04", "Northfield barn site");
        await page.ClickAsync("#send");

        var labels = page.Locator("#sent a", new() { HasText = "Labels" });
        await labels.WaitForAsync(new() { Timeout = 30_000 });
        var answer = await page.APIRequest.GetAsync(
            new Uri(host.Address, await labels.GetAttributeAsync("href")).ToString());
        Assert.Equal("application/pdf", answer.Headers["content-type"]);
        await page.Locator("#order").ScrollIntoViewIfNeededAsync();
        await DeskBrowser.Shoot(page, "ordered");
        Assert.Empty(browser.Troubles);
    }

    [Fact]
    public async Task What_an_order_lacks_is_said_beside_its_field()
    {
        var page = await browser.OpenAsync(address: host.Address);
        await page.ClickAsync("#send");

        await page.WaitForSelectorAsync("#orderNumber-mistake");
        Assert.True(await page.IsVisibleAsync("#neededBy-mistake"));
        Assert.True(await page.IsVisibleAsync("#shipTo-mistake"));
        Assert.Contains("Not sent", await page.TextContentAsync("#sent"));
        await page.Locator("#order").ScrollIntoViewIfNeededAsync();
        await DeskBrowser.Shoot(page, "order-mistakes");
    }

    private static async Task Fill(IPage page, string number, string day, string shipTo)
    {
        await page.FillAsync("#orderNumber", number);
        await page.FillAsync("#neededBy", day);
        await page.FillAsync("#shipTo", shipTo);
    }
}
