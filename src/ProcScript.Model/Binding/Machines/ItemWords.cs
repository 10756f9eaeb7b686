using ProcScript.Model.Machines;

namespace ProcScript.Model.Binding.Machines;

/// <summary>What people call the sorts of items.</summary>
internal static class ItemWords
{
    /// <summary>A place, which is no item: nothing is done to it.</summary>
    public const string Place = "a place";

    /// <summary>The sort with its article: <c>a part</c>.</summary>
    public static string Sort(MachineItem item) => item switch
    {
        Part => "a part",
        Joint { IsLock: true } => "a lock",
        Joint { Role: JointRole.Cover } => "a cover",
        Joint => "a joint",
        Energy => "an energy",
        Fluid => "a fluid",
        Control => "a control",
        _ => throw new ArgumentOutOfRangeException(nameof(item), item.GetType().Name, null),
    };
}
