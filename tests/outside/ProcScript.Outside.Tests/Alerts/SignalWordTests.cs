using ProcScript.Model.Procedures;

namespace ProcScript.Outside.Tests.Alerts;

/// <summary>What the signal words stand for, as published of ANSI Z535.</summary>
public sealed class SignalWordTests
{
    /// <summary>
    /// DANGER will and WARNING could kill or seriously injure, CAUTION could injure slightly or moderately, NOTICE has nothing to do with
    /// injury and has no safety alert symbol (safetylabel.com on Z535.4-2007 and electromark.com; read).
    /// </summary>
    [Theory]
    [InlineData(SignalWord.Danger, true, true)]
    [InlineData(SignalWord.Warning, true, true)]
    [InlineData(SignalWord.Caution, true, false)]
    [InlineData(SignalWord.Notice, false, false)]
    public void Each_word_has_its_consequence(SignalWord word, bool injury, bool serious)
    {
        Assert.Equal(injury, word.IsOfInjury());
        Assert.Equal(serious, word.IsOfSeriousInjury());
    }

    /// <summary>
    /// An alert about damage alone is never DANGER or WARNING (an encyclopedia's article on precautionary statements, after Z535.5; read).
    /// </summary>
    [Fact]
    public void Damage_alone_is_never_a_danger_or_a_warning() =>
        Assert.DoesNotContain(Enum.GetValues<SignalWord>().Where(word => !word.IsOfInjury()), word => word.IsOfSeriousInjury());
}
