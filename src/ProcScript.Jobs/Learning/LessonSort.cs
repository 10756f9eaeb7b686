namespace ProcScript.Jobs.Learning;

/// <summary>What a suggestion is about.</summary>
public enum LessonSort
{
    /// <summary>How long a step takes.</summary>
    Time,

    /// <summary>How many pieces break or are lost: spares, or new ones each time.</summary>
    Spare,

    /// <summary>What else was needed and is on no list.</summary>
    Supply,

    /// <summary>A tool that was missing.</summary>
    Tool,

    /// <summary>A note that came up again and again.</summary>
    Note,
}
