using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Expecting;

/// <summary>Holds a checked library against what it expects of itself.</summary>
/// <param name="report">The check, with its runs.</param>
/// <param name="planOf">Makes the plan of a procedure, where somebody has it already; null to make it of the report.</param>
public sealed class ExpectCheck(LibraryReport report, Func<ProcedureReport, Plan?>? planOf = null)
{
    /// <summary>How far a band of time that is filled in reaches to either side of the time as it is.</summary>
    private const double Band = 0.2;

    private const int MostNamed = 8;

    private readonly Dictionary<ProcedureReport, Plan?> _plans = new(ReferenceEqualityComparer.Instance);

    /// <summary>What is not met, in the order of the text. A section without a line below it fails with all that could stand there.</summary>
    public ImmutableArray<ExpectFailure> Judge(ExpectFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var failures = ImmutableArray.CreateBuilder<ExpectFailure>();
        foreach (var section in file.Sections)
        {
            var expectations = file.Of(section).ToList();
            var found = section switch
            {
                PackSection pack => OfPack(pack, expectations),
                FileSection of => OfFile(of, expectations),
                _ => [],
            };
            failures.AddRange(found.Select(one => new ExpectFailure(file, one.Line, one.Message, one.AsIs)));
        }

        return failures.ToImmutable();
    }

    private IEnumerable<(int Line, string Message, IReadOnlyList<string>? AsIs)> OfPack(PackSection section, List<Expectation> expectations)
    {
        var jobs = report.Procedures.Where(one => one.Procedure.Job == section.Job).ToList();
        var variants = jobs.Where(one => section.With.All(one.Options.Contains) && !section.Without.Any(one.Options.Contains)).ToList();
        if (variants.Count == 0)
        {
            yield return (section.Line, jobs.Count == 0 ? NoJob(section.Job) : $"{section.Job} has no pack in such a variant; see what options the machine has", null);
            yield break;
        }

        var unproven = variants.Where(one => PlanOf(one) is null).ToList();
        foreach (var expected in expectations.OfType<NotProvenExpectation>().Where(_ => unproven.Count < variants.Count))
        {
            yield return (expected.Line, $"{Name(variants.First(one => PlanOf(one) is not null))} is proven now", null);
        }

        var others = expectations.Where(one => one is not NotProvenExpectation).ToList();
        if (unproven.Count > 0)
        {
            if (others.Count > 0 || expectations.Count == 0)
            {
                yield return (section.Line, $"{Name(unproven[0])} is not proven; see what 'procscript check' says of it", null);
            }

            yield break;
        }

        if (expectations.Count == 0)
        {
            yield return (section.Line, "nothing is expected of it", PackAsIs(section, variants.ConvertAll(one => PlanOf(one)!)));
        }

        foreach (var expected in others)
        {
            if (Failure(expected, variants) is { } failure)
            {
                yield return (expected.Line, failure.Message, failure.AsIs is { } line ? [line] : null);
            }
        }
    }

    private (string Message, string? AsIs)? Failure(Expectation expected, List<ProcedureReport> variants)
    {
        var plans = variants.ConvertAll(one => PlanOf(one)!);
        var fails = variants.FindIndex(one => Difference(expected, PlanOf(one)!) is not null);
        if (fails < 0)
        {
            return null;
        }

        var asIs = AsIs(expected, plans);
        return ($"{Name(variants[fails])} has {Difference(expected, plans[fails])}", asIs);
    }

    /// <summary>What a pack has instead, as the rest of a sentence; null where it has what is expected.</summary>
    private static string? Difference(Expectation expected, Plan plan) => expected switch
    {
        CountExpectation count when PackFacts.Count(plan, count.What) is var actual && actual != count.Count => Invariant($"{actual} {count.What}, not {count.Count}"),
        TimeExpectation time when PackFacts.Minutes(plan) is var minutes && (minutes < time.Least || minutes > time.Most) =>
            Invariant($"{minutes:0.#} min of work for one person, not {time.Least:0.#} to {time.Most:0.#} min"),
        OrderExpectation order => Disorder(order, [.. Words(plan, order.Phase)]),
        _ => null,
    };

    private static string? Disorder(OrderExpectation order, List<string> actual)
    {
        var from = 0;
        for (var at = 0; at < order.Steps.Count; at++)
        {
            var step = order.Steps[at];
            var found = actual.FindIndex(from, words => words == step);
            if (found < 0)
            {
                return !actual.Contains(step, StringComparer.Ordinal) ? $"no '{step}' in its {order.Phase}"
                    : at > 0 && order.Steps[at - 1] == step ? $"'{step}' less often in its {order.Phase}"
                    : $"'{step}' before '{order.Steps[at - 1]}' in its {order.Phase}, not after it";
            }

            from = found + 1;
        }

        return null;
    }

    /// <summary>The line that all these packs would meet; null where there is none.</summary>
    private static string? AsIs(Expectation expected, List<Plan> plans)
    {
        switch (expected)
        {
            case CountExpectation count:
                var counts = plans.Select(plan => PackFacts.Count(plan, count.What)).Distinct().ToList();
                return counts is [var only] ? Invariant($"{count.What} {only}") : null;
            case TimeExpectation:
                return TimeAsIs(plans);
            case OrderExpectation order:
                var wanted = order.Steps.ToHashSet(StringComparer.Ordinal);
                var steps = Words(plans[0], order.Phase).Where(wanted.Contains).ToList();
                var all = order with { Steps = steps };
                return steps.Count > 0 && plans.TrueForAll(plan => Difference(all, plan) is null) ? $"{order.Phase} {string.Join(", ", steps)}" : null;
            default:
                return null;
        }
    }

    /// <summary>All that could be expected of these packs together.</summary>
    private static List<string> PackAsIs(PackSection section, List<Plan> plans)
    {
        IEnumerable<Expectation> all =
        [
            .. PackFacts.Phases.Select(phase => new OrderExpectation(section.Line, section, phase, [.. Words(plans[0], phase).Where(words => plans.TrueForAll(plan => Words(plan, phase).Contains(words, StringComparer.Ordinal)))])),
            .. PackFacts.Counted.Select(what => new CountExpectation(section.Line, section, what, PackFacts.Count(plans[0], what))),
            new TimeExpectation(section.Line, section, 0, 0),
        ];
        return [.. all.Select(one => AsIs(one, plans)).OfType<string>()];
    }

    private static string TimeAsIs(List<Plan> plans)
    {
        var minutes = plans.ConvertAll(PackFacts.Minutes);
        return Invariant($"time {Math.Floor(minutes.Min() * (1 - Band))} .. {Math.Ceiling(minutes.Max() * (1 + Band))} min");
    }

    private IEnumerable<(int Line, string Message, IReadOnlyList<string>? AsIs)> OfFile(FileSection section, List<Expectation> expectations)
    {
        if (!report.Library.Trees.ContainsKey(section.Path))
        {
            yield return (section.Line, $"there is no file '{section.Path}' among those that are checked", null);
            yield break;
        }

        var findings = report.Findings
            .Where(one => one.Finding.Primary.Path == section.Path)
            .Select(one => (one.Finding.Rule.Code, Line: report.LinesOf(one.Finding.Primary).Start.Line + 1, one.Finding.Message))
            .ToList();
        if (expectations.Count == 0)
        {
            yield return (section.Line, "nothing is expected of it", findings.Count == 0 ? ["nothing"] : [.. findings.Select(one => Invariant($"{one.Code} at {one.Line}"))]);
        }

        var free = findings.Where(one => !expectations.OfType<FindingExpectation>().Any(other => other.Code == one.Code && other.At == one.Line)).ToList();
        foreach (var expected in expectations)
        {
            switch (expected)
            {
                case NoFindingExpectation when findings.Count > 0:
                    yield return (expected.Line, Invariant($"it has {findings[0].Code} at {findings[0].Line}: {findings[0].Message}"), [.. findings.Select(one => Invariant($"{one.Code} at {one.Line}"))]);
                    break;
                case FindingExpectation { At: var at, Code: var code } when !findings.Exists(one => one.Code == code && (at is null || at == one.Line)):
                    var elsewhere = free.FindIndex(one => one.Code == code);
                    if (at is not null && elsewhere >= 0)
                    {
                        yield return (expected.Line, Invariant($"{code} is at {free[elsewhere].Line}, not at {at}"), [Invariant($"{code} at {free[elsewhere].Line}")]);
                        free.RemoveAt(elsewhere);
                    }
                    else
                    {
                        yield return (expected.Line, Invariant($"there is no {code}{(at is null ? "" : $" at {at}")}"), null);
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private static IEnumerable<string> Words(Plan plan, string phase) => PackFacts.StepsOf(plan, phase).Select(PackFacts.WordsOf).OfType<string>();

    private string NoJob(string job)
    {
        var jobs = report.Procedures.Select(one => one.Procedure.Job).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return jobs.Count == 0
            ? $"there is no job '{job}': the library has none"
            : $"there is no job '{job}'; there are: {string.Join(", ", jobs.Take(MostNamed))}{(jobs.Count > MostNamed ? Invariant($" and {jobs.Count - MostNamed} more") : "")}";
    }

    private static string Name(ProcedureReport one) => one.Options.IsEmpty ? one.Procedure.Job : $"{one.Procedure.Job} with {string.Join(", ", one.Options)}";

    private Plan? PlanOf(ProcedureReport one) => _plans.TryGetValue(one, out var plan) ? plan : _plans[one] = planOf is null ? one.CreatePlan() : planOf(one);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
