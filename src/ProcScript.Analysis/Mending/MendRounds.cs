using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Mending;

/// <summary>
/// Mends in rounds: applies what does not get in its own way, checks again, and goes on until nothing more is to be mended.
/// </summary>
/// <param name="request">What is to be mended.</param>
/// <param name="check">Checks the library with these texts in place of its own.</param>
internal sealed class MendRounds(MendRequest request, Func<ImmutableSortedDictionary<string, string>, MendState> check)
{
    /// <summary>Rounds beyond this go nowhere: the fixes of the whole rule list settle in a few.</summary>
    internal const int MostRounds = 40;

    private readonly Dictionary<(string Code, string Path, string Message, string Title), RefusedMend> _refused = [];
    private readonly List<Mend> _mended = [];
    private readonly List<(string Texts, ImmutableArray<Mend> Mends)> _rounds = [];
    private readonly Dictionary<(string Code, string Path), RuleInfo> _fighting = [];

    /// <summary>What was mended.</summary>
    public IReadOnlyList<Mend> Mended => _mended;

    /// <summary>What was tried and not applied.</summary>
    public IReadOnlyCollection<RefusedMend> Refused => _refused.Values;

    /// <summary>The rules that do not settle, file by file.</summary>
    public ImmutableArray<MendFight> Fights =>
    [
        .. _fighting.GroupBy(one => one.Key.Path, one => one.Value, StringComparer.Ordinal)
            .OrderBy(file => file.Key, StringComparer.Ordinal)
            .Select(file => new MendFight(file.Key, [.. file.OrderBy(rule => rule.Code, StringComparer.Ordinal)])),
    ];

    /// <summary>Runs the rounds and gives the library as it comes out. Where fixes fight in a file, all is begun anew without them there.</summary>
    public MendState Run(MendState start)
    {
        while (true)
        {
            if (Settle(start) is { } settled)
            {
                return settled;
            }

            _rounds.Clear();
            _mended.Clear();
            _refused.Clear();
        }
    }

    /// <summary>The library once nothing more is to be mended; null where fixes fight, which are known then.</summary>
    private MendState? Settle(MendState start)
    {
        var state = start;
        for (var round = 0; ; round++)
        {
            var candidates = Candidates(state);
            if (candidates.IsEmpty)
            {
                return state;
            }

            var before = _mended.Count;
            var next = Apply(state, candidates);
            if (_mended.Count > before)
            {
                var fighting = Unsettled(state, next, [.. _mended.Skip(before)], round).ToList();
                if (fighting.Count > 0)
                {
                    foreach (var (mend, path) in fighting.SelectMany(mend => mend.Fix.Edits.Select(edit => (mend, edit.Place.Path))))
                    {
                        _fighting.TryAdd((mend.Finding.Rule.Code, path), mend.Finding.Rule);
                    }

                    return null;
                }
            }

            state = next;
        }
    }

    /// <summary>The fix that a finding would be mended with; null where there is none, or a person has to choose.</summary>
    internal static Fix? Chosen(Finding finding, MendRequest request)
    {
        foreach (var grade in new[] { FixGrade.Safe, FixGrade.NeedsLook })
        {
            var fixes = finding.Fixes.Where(fix => fix.Grade == grade).ToList();
            if (fixes.Count > 0)
            {
                return fixes.Count == 1 && request.Allows(grade) ? fixes[0] : null;
            }
        }

        return null;
    }

    /// <summary>What is applied in one round: the safe fixes, and only once there are none the others, which may change the packs.</summary>
    private ImmutableArray<MendCandidate> Candidates(MendState state) =>
        Candidates(state, FixGrade.Safe) is { IsEmpty: false } safe ? safe : Candidates(state, FixGrade.NeedsLook);

    /// <summary>The first of those that get in each other's way, and of one and the same edit all findings.</summary>
    private ImmutableArray<MendCandidate> Candidates(MendState state, FixGrade grade)
    {
        var places = new TakenPlaces();
        return
        [
            .. from reported in state.Report.Findings
               let finding = reported.Finding
               where request.MayChange(finding.Primary.Path) && request.Rules?.Contains(finding.Rule.Code) != false
               let fix = Chosen(finding, request)
               where fix?.Grade == grade
                   && fix.Edits.All(edit => request.MayChange(edit.Place.Path))
                   && !_refused.ContainsKey(MendCandidate.KeyOf(finding, fix))
                   && !fix.Edits.Any(edit => _fighting.ContainsKey((finding.Rule.Code, edit.Place.Path)))
               group (finding, fix) by MendCandidate.TextOf(fix) into same
               let candidate = new MendCandidate([.. same.Select(one => one.finding)], same.First().fix)
               where places.TryTake(candidate.Fix)
               select candidate,
        ];
    }

    private MendState Apply(MendState state, ImmutableArray<MendCandidate> candidates)
    {
        var (accepted, best) = new Halving<MendCandidate>(
            together => check(Edited(state, together)),
            (next, together) => MendTrial.Objection(state, next, together),
            Refuse).Run(state, candidates);
        _mended.AddRange(accepted.SelectMany(one => one.Findings.Select(finding => new Mend(finding, one.Fix))));
        return best;

        void Refuse(MendCandidate single, string objection)
        {
            var line = state.Report.Library.Trees[single.Finding.Primary.Path].Text.LineAt(single.Finding.Primary.Span.Start) + 1;
            foreach (var finding in single.Findings)
            {
                _refused[MendCandidate.KeyOf(finding, single.Fix)] = new RefusedMend(finding, single.Fix, line, objection);
            }
        }
    }

    private static ImmutableSortedDictionary<string, string> Edited(MendState state, ImmutableArray<MendCandidate> candidates)
    {
        var texts = state.Edited.ToBuilder();
        foreach (var file in candidates.SelectMany(one => one.Fix.Edits).GroupBy(edit => edit.Place.Path, StringComparer.Ordinal))
        {
            var edits = file.OrderBy(edit => edit.Place.Span.Start).ThenBy(edit => edit.Place.Span.Length);
            texts[file.Key] = TextEdits.Apply(state.TextOf(file.Key), edits);
        }

        return texts.ToImmutable();
    }

    /// <summary>What was mended since the library last looked as it does now, or for ever; nothing where it goes on well.</summary>
    private IEnumerable<Mend> Unsettled(MendState before, MendState after, ImmutableArray<Mend> mends, int round)
    {
        _rounds.Add((before.TextsKey, mends));
        var texts = after.TextsKey;
        var same = _rounds.FindIndex(earlier => earlier.Texts == texts);
        var rounds = same >= 0 ? _rounds.Skip(same) : round + 1 < MostRounds ? [] : _rounds.TakeLast(MostRounds / 2);
        return rounds.SelectMany(one => one.Mends);
    }
}
