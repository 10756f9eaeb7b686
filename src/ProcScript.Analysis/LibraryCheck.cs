using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Figures;
using ProcScript.Analysis.Rules.Settings;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
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
        Run(library, settings, new CheckMemory(isKept: false), cancellation);

    /// <summary>
    /// Reads, binds and checks every file of a store for the findings alone. The runs of the procedures are let go as soon as they are
    /// judged, which takes far less memory; no plan can be made of the report.
    /// </summary>
    /// <param name="store">The files.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Judge(ISourceStore store, CheckSettings settings, CancellationToken cancellation = default) =>
        Run(LibraryBinder.Bind(store, cancellation), settings, new CheckMemory(isKept: false), CheckScope.Everything, keepsRuns: false, cancellation);

    /// <summary>Checks a bound library again: what was proven before and did not change is not proven anew.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="memory">What came of earlier checks.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Run(Library library, CheckSettings settings, CheckMemory memory, CancellationToken cancellation = default) =>
        Run(library, settings, memory, CheckScope.Everything, keepsRuns: true, cancellation);

    /// <summary>
    /// Checks of a bound library what some files have a bearing on, for the findings alone: of these they are those of a check of the whole.
    /// </summary>
    /// <param name="library">The whole library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="scope">What is to be checked; the other procedures are not proven, and not in the report.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LibraryReport Judge(Library library, CheckSettings settings, CheckScope scope, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scope);
        return scope.Part(Run(library, settings, new CheckMemory(isKept: false), scope, keepsRuns: false, cancellation));
    }

    private static LibraryReport Run(Library library, CheckSettings settings, CheckMemory memory, CheckScope scope, bool keepsRuns, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(memory);
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(settings);
        lock (memory.Gate)
        {
            return Check(library, settings, memory, scope, keepsRuns, new ParallelOptions { CancellationToken = cancellation });
        }
    }

    private static LibraryReport Check(
        Library library, CheckSettings settings, CheckMemory memory, CheckScope scope, bool keepsRuns, ParallelOptions parallel)
    {
        memory.HoldTo(settings);
        if (memory.Settled is { } last && LibraryChange.Between(last.Library, library) is { } change)
        {
            return CheckAfter(change, last, library, settings, memory, parallel);
        }

        // Where this one is cut off, the next has nothing to go on from.
        memory.Settled = null;
        var machines = Machines(library, settings, memory, scope, parallel);
        var remembered = memory.Begin(library);
        var groups = new GroupCheck(library, settings, machines, memory, remembered, scope, parallel)
        {
            Outcomes = new ProcedureOutcome[library.Procedures.Length],
            Traces = WholeLibraryCheck.Speaks(library, settings, scope) ? new ProcedureTraces[library.Procedures.Length] : null,
        };
        var families = groups.Judge(keepsRuns);
        var settled = new SettledCheck
        {
            Library = library,
            Machines = machines,
            Outcomes = groups.Outcomes,
            Traces = groups.Traces,
        };
        SyntaxTree[] trees = [.. library.Trees.Values.Where(tree => scope.Holds(tree.Text.Path))];
        settled.Fill(trees, ProseCheck.Judge(trees, settings, memory, parallel));
        settled.Whole = settled.Traces is null ? null : new WholeLibraryCheck();
        settled.Whole?.Judge(change: null, library, settings, settled.Traces!, memory, parallel);
        settled.Kinds = [.. KindCheck.Judge(library, settings, memory)];
        settled.Figures = [.. FigureCheck.Judge(library, settings, scope)];
        var report = Report(settled, families, settings, memory);
        remembered.End();
        memory.Settled = memory.IsKept ? settled : null;
        return report;
    }

    /// <summary>Checks again what a change touches.</summary>
    private static LibraryReport CheckAfter(
        LibraryChange change, SettledCheck settled, Library library, CheckSettings settings, CheckMemory memory, ParallelOptions parallel)
    {
        var machines = change.AreMachinesOther ? Machines(library, settings, memory, CheckScope.Everything, parallel) : settled.Machines;
        var remembered = memory.Begin(library);
        var touched = settled.Touched(change);
        var groups = new GroupCheck(library, settings, machines, memory, remembered, CheckScope.Everything, parallel)
        {
            Outcomes = [.. settled.Outcomes],
            Traces = settled.Traces is { } traces ? [.. traces] : null,
        };
        groups.Run(touched);

        // From here on it is a matter of moments, and cut off in the middle it would be of no use to the next.
        memory.Settled = null;
        var rest = new ParallelOptions();
        settled.Machines = machines;
        settled.Replace(library, touched, groups);
        ImmutableArray<Finding> families = [.. FamilyCheck.Judge(settled.Outcomes, machines, memory.Families, rest)];
        SyntaxTree[] trees = [.. change.Files.Select(path => library.Trees[path])];
        settled.Replace(trees, ProseCheck.Judge(trees, settings, memory, rest));
        settled.Whole?.Judge(change, library, settings, settled.Traces!, memory, rest);
        settled.Kinds = change.AreKindsOther ? [.. KindCheck.Judge(library, settings, memory)] : settled.Kinds;
        settled.Figures = [.. FigureCheck.Judge(library, settings, CheckScope.Everything)];
        var report = Report(settled, families, settings, memory);
        remembered.End();
        memory.Settled = settled;
        return report;
    }

    private static LibraryReport Report(SettledCheck settled, IEnumerable<Finding> families, CheckSettings settings, CheckMemory memory)
    {
        var library = settled.Library;
        IEnumerable<Finding> findings =
        [
            .. settings.Findings,
            .. TextNotTranslated.Judge(library, settings),
            .. library.Findings,
            .. settled.Kinds,
            .. settled.Figures,
            .. families,
            .. settled.Prose,
            .. settled.Whole?.Findings ?? [],
            .. settled.Merged(),
        ];
        return memory.Reports.Report(
            library,
            settings,
            findings,
            settled.Allowing,
            settled.Whole is not null,
            ImmutableCollectionsMarshal.AsImmutableArray(Array.ConvertAll(settled.Outcomes, outcome => new ProcedureReport(outcome.Procedure, outcome.IsProven, outcome, library))));
    }

    /// <summary>The machines without errors, in order. What follows from one with an error would only repeat it; no procedure on it is run.</summary>
    private static OrderedDictionary<Machine, JudgedMachine> Machines(
        Library library, CheckSettings settings, CheckMemory memory, CheckScope scope, ParallelOptions parallel)
    {
        var wanted = library.Procedures.Where(scope.Holds).Select(procedure => procedure.Machine).ToHashSet();
        Machine[] sound = [.. library.Machines.Where(machine => !machine.HasErrors && (wanted.Contains(machine) || scope.Holds(machine.Declared.Path)))];
        Machine[] missing = [.. sound.Where(machine => !memory.Machines.ContainsKey(machine))];
        var judged = new JudgedMachine[missing.Length];
        Parallel.For(0, missing.Length, parallel, i => judged[i] = JudgedMachine.Of(missing[i], settings));
        var made = missing.Zip(judged).ToDictionary(pair => pair.First, pair => pair.Second);
        var machines = new OrderedDictionary<Machine, JudgedMachine>(sound.Length);
        foreach (var machine in sound)
        {
            machines.Add(machine, memory.Machines.TryGetValue(machine, out var known) ? known : made[machine]);
        }

        memory.Machines = new Dictionary<Machine, JudgedMachine>(machines);
        return machines;
    }
}
