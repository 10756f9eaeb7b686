using System.Text.RegularExpressions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Energies;

/// <summary>An earth post and a live one of the same part and energy, both moved by a job.</summary>
/// <param name="Earth">The earth, or negative, post.</param>
/// <param name="Live">The other.</param>
/// <param name="IsBattery">Whether the energy is a battery, whose earth comes off first; else it is the earth that protects, and comes off last.</param>
internal sealed partial record PostPair(Joint Earth, Joint Live, bool IsBattery)
{
    /// <summary>The pairs among the joints that a job opens, each earth post with one live post after the other.</summary>
    public static IEnumerable<PostPair> Of(IEnumerable<PerformedAction> actions) =>
        from wired in actions.Select(action => action.Target).OfType<Joint>().Distinct()
        where wired is { On: not null, Role: JointRole.Wired or JointRole.Held }
        group wired by (wired.On, wired.Owner) into posts
        where posts.Skip(1).Any()
        let current = ElectricSupply.Of(posts.Key.On!).Current
        where current != CurrentKind.Unknown
        let isBattery = current == CurrentKind.Direct
        from earth in posts
        where EarthWords(isBattery).IsMatch(WordsOf(earth)) && !LiveWords().IsMatch(WordsOf(earth))
        from live in posts
        where live != earth && (isBattery ? LiveWords().IsMatch(WordsOf(live)) : live.Role == JointRole.Wired) && !EarthWords(isBattery).IsMatch(WordsOf(live))
        select new PostPair(earth, live, isBattery);

    /// <summary>The action by which the wrong one of both comes off while the other is still on; null where the order is right.</summary>
    public PerformedAction? WrongOff(IReadOnlyList<PerformedAction> strip) =>
        IsBattery ? Before(strip, Live, Earth, isOff: true) : Before(strip, Earth, Live, isOff: true);

    /// <summary>The action by which the wrong one of both goes on before the other is; null where the order is right.</summary>
    public PerformedAction? WrongOn(IReadOnlyList<PerformedAction> refit) =>
        IsBattery ? Before(refit, Earth, Live, isOff: false) : Before(refit, Live, Earth, isOff: false);

    /// <summary>The first move of one joint, where the last move of the other comes later.</summary>
    private static PerformedAction? Before(IReadOnlyList<PerformedAction> actions, Joint early, Joint late, bool isOff)
    {
        var first = actions.FirstOrDefault(action => Moves(action, early, isOff));
        var last = actions.LastOrDefault(action => Moves(action, late, isOff));
        return first is not null && last is not null && first.Number < last.Number ? first : null;
    }

    private static bool Moves(PerformedAction action, Joint joint, bool isOff) =>
        action.Target == joint
        && action.Changes is [{ Variable.Kind: StateKind.Attached } change]
        && (isOff ? change.After < change.Before : change.After > change.Before);

    private static string WordsOf(Joint joint) => $"{joint.Name.Replace('_', ' ')}, {joint.Title}, {joint.At}, {joint.Kind.Title}";

    private static Regex EarthWords(bool isBattery) => isBattery ? NegativeWords() : ProtectiveWords();

    [GeneratedRegex(@"\b(earth|ground|negative|minus)\b|\bB[-−–](?!\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NegativeWords();

    [GeneratedRegex(@"\b(earth|ground|protective|PE)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ProtectiveWords();

    [GeneratedRegex(@"\b(positive|plus|live)\b|\bB\+", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LiveWords();
}
