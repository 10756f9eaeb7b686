using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis;

/// <summary>Checks a library: the one way from files to findings, whoever asks.</summary>
public static class LibraryCheck
{
    /// <summary>
    /// Reads, binds and checks every file of a store by its own settings. The same files give the same report, however many threads take part.
    /// </summary>
    /// <param name="store">The files.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(ISourceStore store, CancellationToken cancellation = default) =>
        Run(store, SettingsReader.Read(store), cancellation);

    /// <summary>Reads, binds and checks every file of a store by what a shop has chosen.</summary>
    /// <param name="store">The files.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(ISourceStore store, CheckSettings settings, CancellationToken cancellation = default) =>
        Run(LibraryBinder.Bind(store, cancellation), settings, cancellation);

    /// <summary>Checks a bound library.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(Library library, CheckSettings settings, CancellationToken cancellation = default) =>
        Run(library, settings, new CheckMemory(), cancellation);

    /// <summary>Checks a bound library again: what was proven before and did not change is not proven anew.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen; the same every time.</param>
    /// <param name="memory">What came of earlier checks.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(Library library, CheckSettings settings, CheckMemory memory, CancellationToken cancellation = default) =>
        Run(library, settings, memory, CheckScope.Everything, cancellation);

    /// <summary>Checks of a bound library what some files have a bearing on: of these the findings are those of a check of the whole.</summary>
    /// <param name="library">The whole library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="scope">What is to be checked; the other procedures are not proven, and not in the report.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(Library library, CheckSettings settings, CheckScope scope, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scope);
        return scope.Part(Run(library, settings, new CheckMemory(), scope, cancellation));
    }

    private static LibraryReport Run(Library library, CheckSettings settings, CheckMemory memory, CheckScope scope, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(memory);
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(settings);
        var parallel = new ParallelOptions { CancellationToken = cancellation };
        // What follows from a machine with an error would only repeat it; no procedure on it is run.
        var wanted = library.Procedures.Where(scope.Holds).Select(procedure => procedure.Machine).ToHashSet();
        var machines = library.Machines
            .Where(machine => !machine.HasErrors && (wanted.Contains(machine) || scope.Holds(machine.Declared.Path)))
            .ToList();
        var facts = new MachineFacts[machines.Count];
        Parallel.For(0, facts.Length, parallel, i => facts[i] = new MachineFacts(machines[i]) { Settings = settings.For(machines[i].Declared.Path) });
        var factsOf = facts.ToDictionary(fact => fact.Machine);

        var remembered = memory.Begin(factsOf);
        var outcomes = new ProcedureOutcome[library.Procedures.Length];
        Parallel.For(0, outcomes.Length, parallel, i =>
        {
            var procedure = library.Procedures[i];
            outcomes[i] = procedure.HasErrors || !scope.Holds(procedure)
                ? ProcedureOutcome.NotRun(procedure, settings)
                : remembered.Recall(library, procedure, factsOf[procedure.Machine], part => ProcedureCheck.Judge(part, settings, factsOf[procedure.Machine], procedure));
        });

        remembered.End();
        return Report(
            library,
            settings,
            facts,
            outcomes,
            [
                .. OfKinds(library, settings),
                .. FamilyCheck.Judge(outcomes, remembered.Facts, parallel),
                .. ProseCheck.Judge(library, settings, memory, scope, parallel),
                .. WholeLibraryCheck.Judge(library, settings, outcomes, memory, scope, parallel),
            ]);
    }

    private static IEnumerable<Finding> OfKinds(Library library, CheckSettings settings)
    {
        var rules = AnalysisRules.All.OfType<KindRule>().ToList();
        return library.Kinds.SelectMany(kind => rules.SelectMany(rule => rule.Check(kind, library)).Concat(TorqueCheck.Judge(Tightening.Of(kind), settings)));
    }

    private static LibraryReport Report(Library library, CheckSettings settings, MachineFacts[] facts, ProcedureOutcome[] outcomes, IEnumerable<Finding> others)
    {
        var machineRules = AnalysisRules.All.OfType<MachineRule>().ToList();
        var merge = new FindingMerge();
        foreach (var fact in facts)
        {
            merge.Add(fact.Machine.Declared, fact.Machine, machineRules.SelectMany(rule => rule.Check(fact)).Concat(TorqueCheck.Judge(Tightening.Of(fact.Machine), settings)));
        }

        foreach (var outcome in outcomes)
        {
            merge.Add(outcome.Procedure.Declared, outcome.Procedure.Machine, outcome.Findings);
        }

        return ReportAssembly.Report(
            library,
            settings,
            [.. settings.Findings, .. library.Findings, .. others, .. merge.Findings()],
            [.. outcomes.Select(outcome => new ProcedureReport(outcome.Procedure, outcome.IsProven, outcome, library))]);
    }
}
