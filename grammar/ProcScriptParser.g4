// The sentences of ProcScript. The grammar takes more than the language allows (a property in the wrong block, a refit verb in
// a stage): the rooms above say what is wrong in better words than "unexpected token".
// Above a rule stand sentences that it takes (ok) and such that it does not (bad); the tests read them.
// Nearly every decision is made on one word, so that parsing stays fast and a slip is noticed at the word where it happens.
parser grammar ProcScriptParser;

options { tokenVocab = ProcScriptLexer; }

// ok:
// ok: use "a.proc" tool t "tool" machine m { } procedure p on m { }
// ok: tool t use "a.proc"
// bad: part p
// bad: }
file : ( useDirective | catalogDeclaration | machineDeclaration | procedureDeclaration )* EOF ;

// ok: use "../catalog/metric.proc"
// bad: use metric
// bad: use
useDirective : USE text ;

// ---- catalog

// ok: tool socket_13 "13 mm socket"
// ok: fastener m8 "M8" { thread M8x1.25  length 25 mm }
// ok: clip pin
// ok: line line
// bad: tool "13 mm socket"
// bad: fastener m8 { thread }
// bad: washer w
catalogDeclaration : ( TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND ) name text? propertyBlock? ;

// ok: { }
// ok: { mass 3 kg  at "rim"  refit { how "Slowly." } }
// bad: { undo x }
// bad: { mass 3 kg
propertyBlock : LEFT_BRACE ( property | clause | refitProperty )* RIGHT_BRACE ;

// A property that may stand in any block, as far as the grammar goes.
// ok: how "Crosswise."
// ok: torque 22 ± 2 N.m
// ok: torque 20, 40 ± 3 N.m
// ok: torque 30 N.m + 90° + 90 °
// ok: tool ext_600, socket_13
// ok: hazard spring, restraint
// ok: after mains
// ok: renew with lid, lid_bolts
// ok: pattern inside out
// ok: grip fair
// ok: people 2
// ok: seals 2 oring
// ok: cap 2 closing_cap
// ok: uses 5 mL of oil
// ok: with pump add 40 mL
// ok: with drier take 10 mL of oil
// ok: single use
// ok: captive
// ok: temporary
// ok: thread locker
// ok: thread 1 1/8-7 UNC-LH
// ok: verify "Dark." expect <= 5 V
// ok: verify "At both posts." at posts expect <= 5 V { behind lid }
// ok: verify "At both posts." at "the bar behind the lid"
// ok: voltage 400 V ac
// ok: voltage 48 V
// ok: strip needs lever at up
// ok: warning "Sharp."
// ok: strip danger "It swings out."
// bad: how Crosswise
// bad: torque "22 N.m"
// bad: torque 30 N.m +
// bad: tool ext_600 socket_13
// bad: renew lid
// bad: pattern round
// bad: pattern inside
// bad: grip 3
// bad: with pump 40 mL
// bad: single
// bad: cap closing_cap
// bad: cap 2
// bad: uses 5 mL oil
// bad: strip "It swings out."
// bad: strip strip danger "It swings out."
property
    : ( HOW | PHOTO | CHECK | STORE | PPE | RELEASE | ENGAGE | PREPARE | SHUTDOWN | ISOLATE | LOCK | BLEED | RESTORE
      | EMPTY | FILL | COATING | BAG ) text                                                                             # textProperty
    | ( LENGTH | SIZE | MASS | SPARE | WAIT | CHARGE | TAKES | ATTENDED | TIME | CURE | TORQUE_RANGE | REACH | HEIGHT
      | TWIST | FREQUENCY ) quantity                                                                                    # quantityProperty
    | TORQUE quantity ( COMMA quantity )* ( PLUS quantity )*                                                            # torqueProperty
    | ( DRIVE | TOOL | BEHIND | HAZARD | AFTER ) reference ( COMMA reference )*                                         # namesProperty
    | RENEW WITH reference ( COMMA reference )*                                                                         # renewProperty
    | PATTERN ( STAR | LISTED | INSIDE OUT )                                                                            # patternProperty
    | GRIP ( GOOD | FAIR | POOR )                                                                                       # gripProperty
    | PEOPLE count                                                                                                      # peopleProperty
    | THREAD ( threadValue | LOCKER )                                                                                   # threadProperty
    | GRADE gradeValue                                                                                                  # gradeProperty
    | ( SEALS | CAP ) count reference                                                                                   # piecesProperty
    | USES quantity OF reference                                                                                        # usesProperty
    | WITH reference ( ADD | TAKE ) quantity ( OF reference )?                                                          # changeProperty
    | SINGLE USE                                                                                                        # singleUseProperty
    | ( CAPTIVE | OILED | HOIST | TEMPORARY )                                                                           # flagProperty
    | VERIFY text ( AT ( reference | text ) )? ( EXPECT limit )? propertyBlock?                                         # verifyProperty
    | VOLTAGE quantity ( AC | DC )?                                                                                     # voltageProperty
    | STRIP ( NEEDS needs | alert )                                                                                     # stripProperty
    | NEEDS needs                                                                                                       # needsProperty
    | alert                                                                                                             # alertProperty
    ;

// What a joint or a cover may have and a part has not. In a part these words always belong to the joint before them.
// ok: at "rim"
// ok: to frame
// ok: on mains, battery
// ok: covered by 1 cap as lid { release "Lift." }
// bad: at rim
// bad: covered 1 cap as lid
clause
    : AT text                                                   # atClause
    | ( TO | ON | CARRIES ) reference ( COMMA reference )*      # namesClause
    | cover propertyBlock?                                      # coverClause
    ;

// ok: covered by 4 cap as caps
// bad: covered by cap as caps
// bad: covered by 4 cap caps
cover : COVERED BY count name AS reference ;

// ok: refit { check "Tight." }
// ok: refit needs lever at down
// ok: refit caution "It snaps shut."
// bad: refit "Slowly."
refitProperty : REFIT ( NEEDS needs | alert | propertyBlock ) ;

// ok: M8x1.25
// ok: M8x1
// ok: M8x1.25-LH
// ok: M8 LH
// ok: 1/4-20
// ok: 3/8-16 UNC
// ok: 1/2-13 UNC-LH
// ok: 1-8 UNC
// ok: 1 1/8-7 UNC
// ok: 1-11.5 NPT
// ok: #10-24 UNC
// ok: "G 1/2"
// bad: 8
// bad: 1/4
// bad: M8x1.25-
// bad: M8x1.25 RH
threadValue
    : NAME ( DOT INTEGER )? hand?
    | INTEGER ( INTEGER? SLASH INTEGER )? MINUS ( INTEGER | DECIMAL ) NAME? hand?
    | SCREW_SIZE MINUS INTEGER NAME? hand?
    | text
    ;

hand : MINUS? LEFT_HAND ;

// ok: 8.8
// ok: 5
// ok: A2
// ok: A2-70
// ok: "A2-70"
// bad: A2-
gradeValue : number | NAME ( MINUS INTEGER )? | text ;

// ok: lever at down, guard out
// ok: seat_bolts
// bad: lever down
// bad: guard out seat aside
needs : need ( COMMA need )* ;

need : reference ( AT position | needState )? ;

needState : LIVE | ISOLATED | OUT | FITTED | ASIDE | EMPTY | FULL | OFF | SLACK | SUPPORTED ;

// ---- machines

// ok: machine press "Hand press" { part frame }
// ok: machine press { mass 3 kg }
// bad: machine press
// bad: machine "Hand press" { }
machineDeclaration : MACHINE name text? memberBlock ;

memberBlock : LEFT_BRACE member* RIGHT_BRACE ;

// ok: option air_seat "air seat"
// ok: energy battery "12 V" { wait 60 s }
// ok: part harness
// ok: mass 3 kg
// ok: strip needs oil empty
// bad: at "rim"
// bad: to frame
// bad: covered by 1 cap as lid
// bad: undo bolts
member
    : optionDeclaration
    | energyDeclaration
    | fluidDeclaration
    | controlDeclaration
    | partDeclaration
    | jointDeclaration
    | asideClause
    | eachMembers
    | whenMembers
    | property
    | refitProperty
    ;

optionDeclaration : OPTION name text? ;

energyDeclaration : ENERGY reference text? propertyBlock? ;

fluidDeclaration : FLUID reference text? propertyBlock? ;

// ok: control lever "lever" { up, down }
// ok: control tap { in, on  needs oil full }
// ok: control c { }
// bad: control lever
// bad: control lever { up down }
controlDeclaration : CONTROL reference text? controlBlock ;

controlBlock : LEFT_BRACE ( position ( COMMA position )* )? ( property | clause | refitProperty )* RIGHT_BRACE ;

// ok: part harness
// ok: part seat "seat" { mass 31 kg  part belt }
// ok: part trim[left, 2] "trim"
// bad: part
// bad: part "seat"
partDeclaration : PART reference text? memberBlock? ;

// Inline clauses go to what stands right before them: after a cover, to the cover. So does the block.
// ok: held by 4 m8 as bolts
// ok: held by 8 m8 as bolts at "edge"
// ok: wired by 1 plug_2 as lamp to loom on battery
// ok: piped by 2 union as unions carries oil
// ok: held by 1 m8 as bolt covered by 1 cap as lid at "rim"
// ok: held by 1 m8 as bolt { covered by 1 cap as lid  torque 9 N.m }
// bad: held 4 m8 as bolts
// bad: held by m8 as bolts
// bad: held by 4 m8
// bad: glued by 1 m8 as bolts
// bad: held by 1 m8 as bolt covered by 1 cap as lid { } { }
jointDeclaration : ( HELD | WIRED | PIPED ) BY count name AS reference inlineClause* ( inlineCover+ | propertyBlock )? ;

inlineCover : cover inlineClause* propertyBlock? ;

inlineClause
    : AT text                           # inlineAt
    | ( TO | ON | CARRIES ) reference   # inlineNames
    ;

// The plain needs right behind it are its own. A part may have such needs too, so to say it here would take a look ahead over
// all of them; the tree gives them to the clause instead.
// ok: aside "Tilt it."
// ok: aside
// bad: aside seat
asideClause : ASIDE text? ;

// ok: each side in left, right { part trim[side] }
// ok: each n in 1 .. 3 { }
// bad: each left, right { }
// bad: each side in { }
eachMembers : EACH name IN values memberBlock ;

// ok: when air_seat { mass 3 kg }
// ok: when not air_seat { }
// ok: when side is left { }
// ok: when side is not left { }
// bad: when { }
// bad: when side left { }
whenMembers : WHEN test memberBlock ;

values : INTEGER RANGE INTEGER | value ( COMMA value )* ;

value : name | INTEGER ;

test : NOT name | name ( IS NOT? value )? ;

// ---- procedures

// ok: procedure seat_out "Take the seat out" on press { }
// ok: procedure door(side in left, right, n in 1 .. 2) on press { goal remove door[side] }
// bad: procedure seat_out "Take the seat out" { }
// bad: procedure door() on press { }
// bad: procedure door(left) on press { }
procedureDeclaration : PROCEDURE name parameters? text? ON name procedureBlock ;

// A comma brings another value or another parameter, and only an "in" tells which; so the tree sorts them.
parameters : LEFT_PAREN parameter ( COMMA furtherParameter )* RIGHT_PAREN ;

parameter : name IN firstValues ;

furtherParameter : INTEGER | name ( IN firstValues )? ;

firstValues : name | INTEGER ( RANGE INTEGER )? ;

procedureBlock : LEFT_BRACE procedureItem* RIGHT_BRACE ;

// ok: goal replace seat
// ok: work { clean seat }
// ok: do other
// ok: time 5 min
// ok: refit needs lever at up
// ok: refit { fit a before fit b }
// bad: undo bolts
// bad: fit a before fit b
procedureItem
    : goal
    | stage
    | doCall
    | workBlock
    | refitRules
    | eachItems
    | whenItems
    | property
    ;

goal : GOAL verb reference ;

// ok: stage "Seat" { undo bolts remove seat }
// bad: stage Seat { }
// bad: stage "Seat"
stage : STAGE text stepBlock ;

// ok: do seat_out
// ok: do door(left, 2)
// ok: do door()
// bad: do door left
// bad: do
doCall : DO name ( LEFT_PAREN ( value ( COMMA value )* )? RIGHT_PAREN )? ;

workBlock : WORK stepBlock ;

eachItems : EACH name IN values procedureBlock ;

whenItems : WHEN test procedureBlock ;

stepBlock : LEFT_BRACE step* RIGHT_BRACE ;

// ok: danger "Mains."
// ok: strip warning "It drops."
// ok: refit notice "It snaps shut."
// ok: strip seat
// ok: discard lid because "it breaks"
// ok: each s in left, right { release clip[s] }
// ok: when side is left { remove seat }
// bad: mass 3 kg
// bad: seat
// bad: stage "Seat" { }
// bad: refit { how "Slowly." }
// bad: strip
step
    : alert
    | refitAlert
    | stripStep
    | action
    | textAction
    | discard
    | doCall
    | eachSteps
    | whenSteps
    ;

// ok: danger "Mains."
// bad: danger
// bad: strip danger "Mains."
alert : ( DANGER | WARNING | CAUTION | NOTICE ) text ;

// ok: refit notice "It snaps shut."
// bad: danger "Mains."
// bad: refit needs lever at up
refitAlert : REFIT alert ;

// An alert that stands one way only starts with the same word as an action, so that one word decides between steps.
// ok: strip danger "Mains."
// ok: strip seat { people 2 }
// bad: strip
// bad: strip needs lever at up
stripStep : STRIP ( alert | deed ) ;

eachSteps : EACH name IN values stepBlock ;

whenSteps : WHEN test stepBlock ;

// ok: undo bolts
// ok: undo 4 of bolts
// ok: loosen rest of bolts
// ok: undo rest
// ok: set lever to down
// ok: set lever to 2
// ok: empty oil in background
// ok: remove seat { people 2  refit { how "Slowly." } }
// ok: verify mains
// bad: undo
// bad: undo 4 bolts
// bad: set lever to
// bad: empty oil background
// bad: remove seat people 2
action : actionVerb deed ;

// What an action is done to, and what is said of it.
deed : ( amount OF )? reference ( TO position )? background? propertyBlock? ;

amount : INTEGER | REST ;

verb : STRIP | actionVerb ;

actionVerb
    : UNDO | LOOSEN | RELEASE | UNPLUG | DISCONNECT | CUT | ASIDE | REMOVE | SET | ISOLATE | EMPTY | SUPPORT
    | FASTEN | TIGHTEN | ENGAGE | PLUG | CONNECT | RENEW | RETURN | FIT | RESTORE | FILL | UNSUPPORT
    | REPLACE | REPAIR | CLEAN | INSPECT | ADJUST | VERIFY
    ;

// ok: measure "gap" expect 0.5 .. 2.0 mm
// ok: task "Wait." in background { time 5 min }
// ok: check "Dry." needs oil empty
// bad: measure gap
// bad: check "Dry." expect
textAction : ( MEASURE | TASK | CHECK ) text ( EXPECT limit )? needsClause? background? propertyBlock? ;

needsClause : ( STRIP | REFIT )? NEEDS needs ;

background : IN BACKGROUND ;

// ok: discard lid because "it breaks"
// bad: discard lid
// bad: discard lid "it breaks"
discard : DISCARD reference BECAUSE text ;

// ---- the refit where it is not the plain reverse

// A condition that binds the refit of the whole procedure starts with the same word as its rules.
refitRules : REFIT ( NEEDS needs | ruleBlock ) ;

ruleBlock : LEFT_BRACE refitRule* RIGHT_BRACE ;

refitRule
    : alert
    | orderRule
    | checkRule
    | testRule
    | discard
    | eachRules
    | whenRules
    ;

eachRules : EACH name IN values ruleBlock ;

whenRules : WHEN test ruleBlock ;

// ok: fit trim[left] after fit seat
// ok: engage clips before restore battery
// ok: restore battery while front_bolts, seat open because "The seat slides under power only."
// bad: fit trim after seat
// bad: fit trim
// bad: restore battery while front_bolts because "It slides."
orderRule : verb reference ( order | whileClause ) ;

// ok: while lamp_plug[left], lid open because "Nobody can reach them."
// bad: while lamp_plug open
// bad: while open because "No."
whileClause : WHILE reference ( COMMA reference )* OPEN BECAUSE text ;

// ok: check "Both tubes run."
// ok: check "Runs." expect > 3 mm needs mains live before fit lid
// bad: check tubes
// bad: check "Runs." before lid
checkRule : CHECK text ( EXPECT limit )? needsClause? order? ;

// ok: test "Runs." before fit lid { power mains, house  check "Both lamps light."  measure "Current" expect 2 .. 3 A }
// ok: test "Runs." { power mains  while lamp_plug open because "It is capped."  warning "The wheel turns."  task "Start it." }
// bad: test before fit lid { }
// bad: test "Runs." before lid { power mains }
// bad: test "Runs." { undo bolts }
testRule : TEST text order? testBlock ;

testBlock : LEFT_BRACE testItem* RIGHT_BRACE ;

testItem
    : alert
    | powerClause
    | textAction
    | whileClause
    ;

powerClause : POWER reference ( COMMA reference )* ;

order : ( BEFORE | AFTER ) verb reference ;

// ---- words and figures

text : STRING | UNCLOSED_STRING ;

count : INTEGER ;

// ok: 25 mm
// ok: 22 ± 2 N.m
// ok: 22 +- 2 N·m
// ok: 0.5 .. 2.0 L/min
// ok: 3/8 in
// ok: 1 3/8 in
// ok: 10 %
// ok: 90 ° C
// ok: -5
// ok: 16 lbf.ft
// bad: mm
// bad: 22 ±
// bad: 1 2 mm
quantity : number unit? ( ( PLUS_MINUS | RANGE ) number unit? )? ;

limit : ( AT_MOST | AT_LEAST | LESS_THAN | MORE_THAN )? quantity ;

number : MINUS? ( DECIMAL | INTEGER ( SLASH INTEGER | INTEGER SLASH INTEGER )? ) ;

unit : PERCENT | DEGREE NAME? | unitName ( ( DOT | MIDDLE_DOT | SLASH ) unitName )* ;

unitName : NAME | IN ;

// ok: seat
// ok: trim[left]
// ok: trim[post, 2]
// ok: line
// ok: off
// bad: trim[]
// bad: trim[left
// bad: work
reference : name index? ;

index : LEFT_BRACKET value ( COMMA value )* RIGHT_BRACKET ;

// Words that a technician may want as a name. Verbs and the words that hold a sentence together stay reserved.
name
    : NAME
    | TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND | OPTION | ENERGY | FLUID | CONTROL | GOAL
    | REST | BACKGROUND | EXPECT | THREAD | LENGTH | GRADE | DRIVE | TORQUE | SIZE | MASS | SPARE | SEALS
    | USES | SINGLE | CAPTIVE | CAP | TEMPORARY | WAIT | VERIFY | CHARGE | TAKES | ATTENDED | TIME | PEOPLE | HOW | PHOTO
    | STORE | PPE | LIVE | ISOLATED | OUT | FITTED | FULL | OFF | SLACK | SUPPORTED
    | PREPARE | SHUTDOWN | LOCK | BLEED | COATING | BAG | CURE | TORQUE_RANGE | REACH | HEIGHT | TWIST | FREQUENCY
    | HAZARD | WITH | PATTERN | STAR | LISTED | INSIDE | GRIP | GOOD | FAIR | POOR | LOCKER | ADD | TAKE | OILED | HOIST
    | VOLTAGE | AC | DC | TEST | POWER | WHILE | OPEN | LEFT_HAND
    ;

// ok: down
// ok: 2
// ok: on
// ok: in
// ok: at
// bad: is
// bad: "up"
position : name | INTEGER | ON | IN | TO | AT ;
