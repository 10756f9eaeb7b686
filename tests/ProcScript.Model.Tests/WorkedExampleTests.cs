using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Tests;

/// <summary>The worked example binds whole, without a finding.</summary>
public sealed class WorkedExampleTests
{
    private static readonly Library Library = LibraryBinder.Bind(WorkedExample.Store, TestContext.Current.CancellationToken);

    [Fact]
    public void It_has_no_findings() =>
        Assert.Empty(Library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message} {finding.Primary}"));

    [Fact]
    public void Its_machine_is_there_once_because_its_option_guards_nothing()
    {
        var machine = Assert.Single(Library.Machines);
        Assert.Equal("ketterby_t40", machine.Name);
        Assert.Equal(["air_seat"], machine.Options.Select(option => option.Name));
        Assert.Empty(machine.With);
        Assert.Equal(
            ["harness", "seat", "roof", "beacon", "pillar_trim[left]", "pillar_trim[right]", "headliner", "evaporator"],
            machine.Parts.Select(part => part.Name));
        Assert.Equal("left pillar trim", machine.Parts[4].Title);
        Assert.Same(machine.Parts[2], machine.Parts[3].Parent);
    }

    [Fact]
    public void Its_joints_know_their_ends_covers_energies_and_fluids()
    {
        var items = Library.Machines[0].Items;
        var bolts = (Joint)items["seat_bolts"];
        Assert.Equal(4, bolts.Count);
        Assert.Equal(["seat_caps"], bolts.Covers.Select(cover => cover.Name));
        Assert.Same(bolts, bolts.Covers[0].Over);
        Assert.Equal("44 ± 4 N·m", bolts.Torque!.Print());
        Assert.Equal("base, two front and two rear", bolts.At);
        Assert.Null(bolts.Other);

        var plug = (Joint)items["beacon_plug"];
        Assert.Same(items["harness"], plug.Other);
        Assert.Same(items["battery"], plug.On);
        Assert.Same(items["beacon"], plug.Owner);

        Assert.Same(items["refrigerant"], ((Joint)items["evap_unions"]).Carries);
        Assert.Equal([items["headliner"], items["roof"]], items["evaporator"].Conditions.Select(condition => condition.Item));
        Assert.Equal([bolts], ((Part)items["seat"]).Aside!.Joints);
    }

    [Fact]
    public void A_called_procedure_stands_in_place_of_its_call()
    {
        var procedure = Library.Procedures.Single(one => one.Name == "replace_evaporator");
        Assert.Equal(["Make safe", "Seat", "Trim and headliner", "Roof", "Evaporator"], procedure.Stages.Select(stage => stage.Title));
        Assert.All(procedure.Stages[1].Steps, step => Assert.Single(step.Calls));
        Assert.All(procedure.Stages[0].Steps, step => Assert.Empty(step.Calls));
        Assert.Equal(
            [(Verb.Release, "grab_cap"), (Verb.Undo, "grab_bolt"), (Verb.Release, "pillar_clips[left]"), (Verb.Remove, "pillar_trim[left]"),
             (Verb.Release, "pillar_clips[right]"), (Verb.Remove, "pillar_trim[right]")],
            procedure.Stages[2].Steps.Take(6).Select(step => (step.Verb, step.Target!.Name)));
        Assert.False(procedure.HasErrors);
        Assert.Equal(["catalog/metric.proc", "ketterby-t40/cab.proc", "ketterby-t40/evaporator.proc"], procedure.Files);
    }

    [Fact]
    public void An_alert_binds_to_the_step_after_it()
    {
        var stage = Library.Procedures.Single(one => one.Name == "replace_evaporator").Stages[0];
        Assert.Empty(stage.Steps[0].Alerts);
        Assert.True(stage.Steps[0].InBackground);
        Assert.Equal(SignalWord.Warning, Assert.Single(stage.Steps[1].Alerts).Word);
    }

    [Fact]
    public void After_is_turned_round_in_the_refit_rules()
    {
        var rules = Library.Procedures.Single(one => one.Name == "replace_evaporator").Rules;
        var order = Assert.IsType<OrderRule>(rules[0]);
        Assert.Equal("seat", order.Earlier.Target.Name);
        Assert.Equal("pillar_trim[left]", order.Later.Target.Name);
        var check = Assert.IsType<CheckRule>(rules[1]);
        Assert.Equal("headliner", check.Before!.Target.Name);
    }

    [Fact]
    public void Work_and_goal_are_bound()
    {
        var procedure = Library.Procedures.Single(one => one.Name == "replace_evaporator");
        Assert.Equal((Verb.Replace, "evaporator"), (procedure.Goals[0].Verb, procedure.Goals[0].Target.Name));
        Assert.Equal([Verb.Replace, Verb.Measure], procedure.Work.Select(step => step.Verb));
        Assert.Equal("0.5 to 2.0 L/min", procedure.Work[1].Expect!.Print());
    }
}
