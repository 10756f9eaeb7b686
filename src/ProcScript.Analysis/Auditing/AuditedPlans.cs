using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.Json.Nodes;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Auditing;

/// <summary>The plans of a library as it is, each made once and only if somebody asks; safe to ask from several threads.</summary>
internal sealed class SoundPlans
{
    private readonly Dictionary<string, Lazy<Plan?>> _plans;
    private readonly ConcurrentDictionary<string, string?> _packs = new(StringComparer.Ordinal);

    /// <summary>Those of a check.</summary>
    public SoundPlans(LibraryReport sound) => _plans = sound.Procedures.DistinctBy(one => one.Key)
        .ToDictionary(one => one.Key, one => new Lazy<Plan?>(one.CreatePlan), StringComparer.Ordinal);

    /// <summary>Whether there is the same procedure, with the same arguments and options.</summary>
    public bool Has(ProcedureReport one) => _plans.ContainsKey(one.Key);

    /// <summary>The plan of the same procedure; null where it is not proven.</summary>
    public Plan? Of(ProcedureReport one) => _plans[one.Key].Value;

    /// <summary>All that its pack says.</summary>
    public string? PackOf(ProcedureReport one) => _packs.GetOrAdd(one.Key, key => ContentOf(_plans[key].Value));

    /// <summary>All that a pack says, but for the sources it is made from.</summary>
    public static string? ContentOf(Plan? plan) => plan is null ? null : PlanRevision.Content(plan with { Sources = [] });
}

/// <summary>The plans of a library with a mistake in one file. A procedure that does not see the file has the plan that it has without.</summary>
/// <param name="sound">The plans without the mistake.</param>
/// <param name="path">The file.</param>
internal sealed class MistakenPlans(SoundPlans sound, string path)
{
    private readonly Dictionary<ProcedureReport, Plan?> _made = new(ReferenceEqualityComparer.Instance);
    private readonly SortedSet<string> _parts = new(StringComparer.Ordinal);

    /// <summary>The plan of a procedure; null where it is not proven.</summary>
    public Plan? Of(ProcedureReport one)
    {
        if (!one.Procedure.Sees(path) && sound.Has(one))
        {
            return sound.Of(one);
        }

        return _made.TryGetValue(one, out var plan) ? plan : _made[one] = one.CreatePlan();
    }

    /// <summary>Whether its pack says something else than without the mistake.</summary>
    public bool IsOtherwise(ProcedureReport one)
    {
        var (before, now) = (sound.Has(one) ? sound.PackOf(one) : null, SoundPlans.ContentOf(Of(one)));
        if (sound.Has(one) && before == now)
        {
            return false;
        }

        _parts.UnionWith(PartsOf(before, now));
        return true;
    }

    /// <summary>What the packs say otherwise of which that was asked, by the names that plans have for it, in order.</summary>
    public ImmutableArray<string> OtherParts => [.. _parts];

    private static IEnumerable<string> PartsOf(string? before, string? now)
    {
        var (old, other) = (Members(before), Members(now));
        return old.Keys.Union(other.Keys).Where(name => old.GetValueOrDefault(name) != other.GetValueOrDefault(name));
    }

    private static Dictionary<string, string?> Members(string? pack) => pack is null
        ? []
        : JsonNode.Parse(pack)!.AsObject().ToDictionary(member => member.Key, member => member.Value?.ToJsonString(), StringComparer.Ordinal);
}
