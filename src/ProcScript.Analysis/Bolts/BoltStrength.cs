using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Bolts;

/// <summary>
/// What is known of how much the bolts of a kind bear and how much of a torque friction takes: enough to judge a torque, or why it is not.
/// </summary>
/// <param name="Thread">The thread; null where its marking is missing or not one of known strength.</param>
/// <param name="Grade">The strength; null where it is not known.</param>
/// <param name="Surface">The nut factor of the surface; null where it is not known.</param>
/// <param name="Doubt">What keeps a torque from being judged; <see cref="StrengthDoubt.None"/> where nothing does.</param>
public sealed record BoltStrength(ThreadDesignation? Thread, StrengthGrade? Grade, NutFactor? Surface, StrengthDoubt Doubt)
{
    /// <summary>Whether a torque on it is judged.</summary>
    public bool IsJudged => Doubt == StrengthDoubt.None;

    /// <summary>The torques that make sense; null where too little is known.</summary>
    public TorqueBand? Band => IsJudged ? new TorqueBand(new Bolt(Thread!, Grade!, Thread!.StressArea!.Value), Surface!) : null;

    /// <summary>
    /// The band of the strongest bolt that it may be: what is known, and the strongest grade and the highest K in place of what is not. Only its
    /// top says anything. Null where not even the thread is known.
    /// </summary>
    public TorqueBand? Ceiling => Thread is { StressArea: { } area } ? new TorqueBand(new Bolt(Thread, Grade ?? Strongest, area), Worst) : null;

    /// <summary>Why a torque on it is not judged, as the rest of a sentence; empty where it is.</summary>
    /// <param name="kind">The kind that this was read from.</param>
    public string Why(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return Doubt switch
        {
            StrengthDoubt.NoThread => "no thread is given",
            StrengthDoubt.UnknownThread => $"`{kind.Thread}` is no thread that tables of strength have",
            StrengthDoubt.NoGrade => "no grade is given",
            StrengthDoubt.NutClass => $"`{kind.Grade}` is the class of a nut and says nothing of its bolt",
            StrengthDoubt.SteelWithoutClass => $"`{kind.Grade}` names the steel and not its class, as `{kind.Grade}-70` does",
            StrengthDoubt.UnknownGrade => $"no table has the grade `{kind.Grade}` for {kind.Thread}",
            StrengthDoubt.UnknownSurface => $"the friction of the coating \"{kind.Coating}\" is not known",
            _ => "",
        };
    }

    /// <summary>What is known of a kind.</summary>
    public static BoltStrength Of(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return Of(kind, kind.Oiled, kind.ThreadLocker);
    }

    /// <summary>What is known of a joint, which may go in oiled or with locker where its kind does not.</summary>
    public static BoltStrength Of(Joint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return Of(joint.Kind, joint.Oiled, joint.ThreadLocker);
    }

    /// <summary>A surface of which nothing is said counts as dry where a torque is judged; it may be any where it is only bounded.</summary>
    private NutFactor Worst => Surface is not null && Surface != NutFactor.Dry ? Surface : NutFactor.Any;

    private bool IsStainless => Doubt == StrengthDoubt.SteelWithoutClass;

    private StrengthGrade Strongest => IsStainless ? StrengthGrade.StrongestStainless
        : Thread!.System == ThreadSystem.Metric ? StrengthGrade.StrongestMetric
        : StrengthGrade.StrongestInch;

    private static BoltStrength Of(Kind kind, bool oiled, bool threadLocker)
    {
        var thread = ThreadDesignation.Parse(kind.Thread) is { StressArea: not null } known ? known : null;
        var grade = thread is null ? null : StrengthGrade.Find(kind.Grade, thread);
        var surface = NutFactor.For(oiled, threadLocker, kind.Coating, grade?.IsStainless ?? StrengthGrade.IsBareSteel(kind.Grade));
        return new BoltStrength(thread, grade, surface, DoubtOf(kind, thread, grade, surface));
    }

    private static StrengthDoubt DoubtOf(Kind kind, ThreadDesignation? thread, StrengthGrade? grade, NutFactor? surface) =>
        string.IsNullOrWhiteSpace(kind.Thread) ? StrengthDoubt.NoThread
        : thread is null ? StrengthDoubt.UnknownThread
        : string.IsNullOrWhiteSpace(kind.Grade) ? StrengthDoubt.NoGrade
        : grade is null ? StrengthGrade.IsBareSteel(kind.Grade) ? StrengthDoubt.SteelWithoutClass
            : StrengthGrade.IsNutClass(kind.Grade, thread) ? StrengthDoubt.NutClass
            : StrengthDoubt.UnknownGrade
        : surface is null ? StrengthDoubt.UnknownSurface
        : StrengthDoubt.None;
}

/// <summary>What keeps the torque of a bolt from being judged.</summary>
public enum StrengthDoubt
{
    /// <summary>Nothing: it is judged.</summary>
    None,

    /// <summary>No thread is given.</summary>
    NoThread,

    /// <summary>The thread is none that tables of strength have.</summary>
    UnknownThread,

    /// <summary>No grade is given.</summary>
    NoGrade,

    /// <summary>The grade is the class of a nut.</summary>
    NutClass,

    /// <summary>The grade names a stainless steel without its class: <c>A2</c>.</summary>
    SteelWithoutClass,

    /// <summary>The grade is none that is known for the thread.</summary>
    UnknownGrade,

    /// <summary>The coating is none whose friction is known.</summary>
    UnknownSurface,
}
