namespace ProcScript.LanguageServer.Tests.Samples;

/// <summary>A small library: a catalog, a machine, and a job that checks clean.</summary>
internal static class Sample
{
    public const string Catalog =
        """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool lever "trim lever"
        fastener m8x25 "M8 × 25 bolt" { drive socket_13  torque 22 ± 2 N.m }
        clip snap_cap "snap cap" { tool lever }
        connector two_way "2-way connector" { release "Press the tab." }
        """;

    public const string Machine =
        """
        use "../catalog.proc"

        machine fan "Tollard fan" {
          energy mains "24 V supply" {
            isolate "Pull the plug."
            verify  "Press the switch: the fan stays still."
            restore "Put the plug in."
          }
          control speed "speed switch" { low, high }
          part guard "front guard" {
            held by 4 m8x25 as guard_bolts {
              at "round the rim"
              covered by 4 snap_cap as guard_caps
            }
          }
          part wheel "fan wheel" { behind guard  held by 1 m8x25 as hub_bolt  needs mains isolated }
          part motor "motor" {
            behind wheel
            mass 4 kg
            held by 4 m8x25 as motor_bolts
            wired by 1 two_way as motor_plug on mains
          }
        }
        """;

    public const string Job =
        """
        use "machine.proc"

        // Replaces the motor.
        procedure motor_new "Replace the motor" on fan {
          goal replace motor
          stage "Guard" {
            isolate mains
            release guard_caps
            undo 2 of guard_bolts
            undo rest of guard_bolts
            remove guard
          }
          stage "Motor" {
            undo hub_bolt
            remove wheel
            unplug motor_plug
            undo motor_bolts
            remove motor
          }
          work { replace motor }
          refit { check "It runs free." before fit guard  check "It runs." needs mains live }
        }

        """;

    /// <summary>The catalog, and more of every sort.</summary>
    public static string RichCatalog { get; } = Catalog +
        """

        tool meter "multimeter"
        tool wrench_25 "torque wrench" { range 5 .. 25 N.m }
        supply oring "O-ring"
        supply grease "grease"
        certificate site_pass "site pass"
        line union "bolted union" { tool socket_13  seals 1 oring  uses 5 mL of grease }
        bond tie "cable tie" { tool lever }

        """;

    /// <summary>The machine, with an option, a fluid, parts by side, and something to find at the first part.</summary>
    public static string RichMachine { get; } = Machine
        .Replace("  control speed", """
              option lamp "lamp"
              place pit "pit" room for 1
              // here in the machine
              fluid oil "gear oil" { charge 1 ± 0.1 L  takes 5 min  empty "Open the drain."  fill "Fill to the plug." }
              when lamp { part shade "lamp shade" { held by 2 m8x25 as shade_bolts } }
              each side in left, right { part foot[side] "{side} foot" { held by 1 m8x25 as foot_bolt[side] } }
              control speed
            """, StringComparison.Ordinal)
        .Replace("    mass 4 kg\n", "    // here in the part\n    mass 4 kg\n", StringComparison.Ordinal);

    /// <summary>The library on a disk.</summary>
    public static TemporaryLibrary Library() => new TemporaryLibrary()
        .With("catalog.proc", Catalog)
        .With("fan/machine.proc", Machine)
        .With("fan/motor.proc", Job);
}
