using CsCheck;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Analysis.Tests.Properties;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>The lockout order holds in every plan, whoever wrote the machine.</summary>
public sealed class LockoutOrderTests
{
    public static TheoryData<string> Jobs =>
        [.. DemoLibrary.Report.Procedures.Where(report => report.IsProven).Select(report => report.Procedure.Job).Distinct()];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void It_holds_in_every_pack_of_the_demo_library(string job) =>
        Assert.All(DemoLibrary.Report.Procedures.Where(report => report.Procedure.Job == job), report => LockoutOrder.Hold(report));

    [Fact]
    public void The_demo_library_isolates_several_energies_one_after_the_other()
    {
        var plans = DemoLibrary.Report.Procedures.Select(report => report.CreatePlan()!).ToList();

        Assert.Contains(plans, plan => plan.Energies.Length > 2);
        Assert.Contains(plans, plan => plan.Energies.Any(energy => !energy.After.IsEmpty));
    }

    [Fact]
    public void It_holds_on_random_machines()
    {
        var isolated = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var report = Sample.Of(seed, asymmetric: true).Checked.Only;
                if (report.IsProven)
                {
                    Interlocked.Add(ref isolated, LockoutOrder.Hold(report));
                }
            },
            print: seed => Sample.Of(seed, asymmetric: true).Text,
            iter: Depth.Of(800));
        Assert.True(isolated > Depth.Least(100), $"only {isolated} energies were isolated");
    }

    [Fact]
    public void It_holds_where_strips_are_expanded() => AnyProcedure.Gen.Sample(
        text => LockoutOrder.Hold(Checked.Unasked(text).Only),
        iter: 100);
}
