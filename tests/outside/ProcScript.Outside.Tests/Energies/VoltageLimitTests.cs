using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;

namespace ProcScript.Outside.Tests.Energies;

/// <summary>
/// From what voltage on work counts as high-voltage work: above 60 V direct and 30 V alternating current. The scope of 49 CFR 571.305 (S3:
/// working voltages more than 60 volts direct current or 30 volts alternating current, read in a stored copy of the text), and the summary
/// of DGUV Information 200-006 (above 30 V AC and 60 V DC, read on its publisher's page).
/// </summary>
public sealed class VoltageLimitTests
{
    private const double Direct = 60;
    private const double Alternating = 30;

    [Fact]
    public void The_limits_that_are_built_in_are_the_published_ones_and_can_only_be_set_tighter()
    {
        Assert.Equal(Direct, SettingsTable.SafeVoltage.BuiltIn.BaseValue);
        Assert.Equal(Direct, SettingsTable.SafeVoltage.Most!.BaseValue);
        Assert.Equal(Alternating, SettingsTable.SafeVoltageAlternating.BuiltIn.BaseValue);
        Assert.Equal(Alternating, SettingsTable.SafeVoltageAlternating.Most!.BaseValue);
    }

    [Theory]
    [InlineData("battery", Direct)]
    [InlineData("AC supply", Alternating)]
    public void A_supply_counts_as_high_from_above_its_limit_on(string supply, double limit)
    {
        Assert.Equal(["PRC5057"], Codes(Energy(limit, supply, "hazard high_voltage  wait 5 min", 1)));
        Assert.Equal([], Codes(Energy(limit + 1, supply, "hazard high_voltage  wait 5 min", 1)));
        Assert.Equal([], Codes(Energy(limit, supply, "", 1)));
        Assert.Equal(["PRC5059"], Codes(Energy(limit + 1, supply, "", 1)));
    }

    [Theory]
    [InlineData("battery", Direct)]
    [InlineData("three-phase mains", Alternating)]
    public void What_is_proved_dead_reads_no_more_than_the_limit(string supply, double limit)
    {
        Assert.Equal([], Codes(Energy(400, supply, "hazard high_voltage  wait 5 min", limit)));
        Assert.Equal(["PRC5044"], Codes(Energy(400, supply, "hazard high_voltage  wait 5 min", limit + 1)));
    }

    private static string Energy(double volts, string supply, string marks, double reading) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        machine bench "Bench" {
          energy supply "{{volts}} V {{supply}}" {
            {{marks}}
            isolate "Pull the plug."
            lock    "Keep it on your person."
            verify  "Measure at the terminals" expect <= {{reading}} V
            restore "Put the plug in."
          }
        }
        """);

    private static IEnumerable<string> Codes(string text) =>
        LibraryCheck.Run(MemorySourceStore.Of("x.proc", text)).Findings.Select(reported => reported.Finding.Rule.Code);
}
