// The sentences of ProcScript. The grammar takes more than the language allows (a property in the wrong block, a refit verb in
// a stage): the rooms above say what is wrong in better words than "unexpected token".
// Nearly every decision is made on one word, so that parsing stays fast and a slip is noticed at the word where it happens.
parser grammar ProcScriptParser;

options { tokenVocab = ProcScriptLexer; }

file : ( useDirective | catalogDeclaration | machineDeclaration | procedureDeclaration )* EOF ;

useDirective : USE text ;

// ---- catalog

catalogDeclaration : ( TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND ) name text? propertyBlock? ;

propertyBlock : LEFT_BRACE ( property | clause | refitProperty )* RIGHT_BRACE ;

// A property that may stand in any block, as far as the grammar goes.
property
    : ( HOW | PHOTO | CHECK | STORE | PPE | RELEASE | ENGAGE | ISOLATE | RESTORE | EMPTY | FILL ) text                  # textProperty
    | ( LENGTH | TORQUE | SIZE | MASS | SPARE | WAIT | CHARGE | TAKES | ATTENDED | TIME ) quantity                      # quantityProperty
    | ( DRIVE | TOOL | BEHIND ) reference ( COMMA reference )*                                                          # namesProperty
    | PEOPLE count                                                                                                      # peopleProperty
    | THREAD threadValue                                                                                                # threadProperty
    | GRADE gradeValue                                                                                                  # gradeProperty
    | SEALS count reference                                                                                             # sealsProperty
    | USES quantity OF reference                                                                                        # usesProperty
    | SINGLE USE                                                                                                        # singleUseProperty
    | CAPTIVE                                                                                                           # captiveProperty
    | VERIFY text ( EXPECT limit )?                                                                                     # verifyProperty
    | STRIP? NEEDS needs                                                                                                # needsProperty
    | ( DANGER | WARNING | CAUTION | NOTICE ) text                                                                      # alertProperty
    ;

// What a joint or a cover may have and a part has not. In a part these words always belong to the joint before them.
clause
    : AT text                                                   # atClause
    | ( TO | ON | CARRIES ) reference ( COMMA reference )*      # namesClause
    | cover propertyBlock?                                      # coverClause
    ;

cover : COVERED BY count name AS reference ;

refitProperty : REFIT ( NEEDS needs | propertyBlock ) ;

threadValue : NAME ( DOT INTEGER )? | INTEGER SLASH INTEGER MINUS INTEGER NAME? | text ;

gradeValue : number | NAME | text ;

needs : need ( COMMA need )* ;

need : reference ( AT position | needState )? ;

needState : LIVE | ISOLATED | OUT | FITTED | ASIDE | EMPTY | FULL | OFF | SLACK | SUPPORTED ;

// ---- machines

machineDeclaration : MACHINE name text? memberBlock ;

memberBlock : LEFT_BRACE member* RIGHT_BRACE ;

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

controlDeclaration : CONTROL reference text? controlBlock ;

controlBlock : LEFT_BRACE ( position ( COMMA position )* )? ( property | clause | refitProperty )* RIGHT_BRACE ;

partDeclaration : PART reference text? memberBlock? ;

// Inline clauses go to what stands right before them: after a cover, to the cover. So does the block.
jointDeclaration : ( HELD | WIRED | PIPED ) BY count name AS reference inlineClause* ( inlineCover+ | propertyBlock )? ;

inlineCover : cover inlineClause* propertyBlock? ;

inlineClause
    : AT text                           # inlineAt
    | ( TO | ON | CARRIES ) reference   # inlineNames
    ;

// The plain needs right behind it are its own. A part may have such needs too, so to say it here would take a look ahead over
// all of them; the tree gives them to the clause instead.
asideClause : ASIDE text? ;

eachMembers : EACH name IN values memberBlock ;

whenMembers : WHEN test memberBlock ;

values : INTEGER RANGE INTEGER | value ( COMMA value )* ;

value : name | INTEGER ;

test : NOT name | name ( IS NOT? value )? ;

// ---- procedures

procedureDeclaration : PROCEDURE name parameters? text? ON name procedureBlock ;

parameters : LEFT_PAREN parameter ( COMMA parameter )* RIGHT_PAREN ;

parameter : name IN values ;

procedureBlock : LEFT_BRACE procedureItem* RIGHT_BRACE ;

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

stage : STAGE text stepBlock ;

doCall : DO name ( LEFT_PAREN ( value ( COMMA value )* )? RIGHT_PAREN )? ;

workBlock : WORK stepBlock ;

eachItems : EACH name IN values procedureBlock ;

whenItems : WHEN test procedureBlock ;

stepBlock : LEFT_BRACE step* RIGHT_BRACE ;

step
    : alert
    | action
    | textAction
    | discard
    | doCall
    | eachSteps
    | whenSteps
    ;

alert : ( DANGER | WARNING | CAUTION | NOTICE ) text ;

eachSteps : EACH name IN values stepBlock ;

whenSteps : WHEN test stepBlock ;

action : verb ( amount OF )? reference ( TO position )? background? propertyBlock? ;

amount : INTEGER | REST ;

verb
    : UNDO | LOOSEN | RELEASE | UNPLUG | DISCONNECT | CUT | ASIDE | REMOVE | SET | ISOLATE | EMPTY | SUPPORT
    | STRIP | FASTEN | TIGHTEN | ENGAGE | PLUG | CONNECT | RENEW | RETURN | FIT | RESTORE | FILL | UNSUPPORT
    | REPLACE | REPAIR | CLEAN | INSPECT | ADJUST
    ;

textAction : ( MEASURE | TASK | CHECK ) text ( EXPECT limit )? needsClause? background? propertyBlock? ;

needsClause : ( STRIP | REFIT )? NEEDS needs ;

background : IN BACKGROUND ;

discard : DISCARD reference BECAUSE text ;

// ---- the refit where it is not the plain reverse

// A condition that binds the refit of the whole procedure starts with the same word as its rules.
refitRules : REFIT ( NEEDS needs | ruleBlock ) ;

ruleBlock : LEFT_BRACE refitRule* RIGHT_BRACE ;

refitRule
    : alert
    | orderRule
    | checkRule
    | discard
    | eachRules
    | whenRules
    ;

eachRules : EACH name IN values ruleBlock ;

whenRules : WHEN test ruleBlock ;

orderRule : verb reference order ;

checkRule : CHECK text ( EXPECT limit )? needsClause? order? ;

order : ( BEFORE | AFTER ) verb reference ;

// ---- words and figures

text : STRING | UNCLOSED_STRING ;

count : INTEGER ;

quantity : number unit? ( ( PLUS_MINUS | RANGE ) number unit? )? ;

limit : ( AT_MOST | AT_LEAST | LESS_THAN | MORE_THAN )? quantity ;

number : MINUS? ( DECIMAL | INTEGER ( SLASH INTEGER | INTEGER SLASH INTEGER )? ) ;

unit : PERCENT | DEGREE NAME? | unitName ( ( DOT | MIDDLE_DOT | SLASH ) unitName )* ;

unitName : NAME | IN ;

reference : name index? ;

index : LEFT_BRACKET value ( COMMA value )* RIGHT_BRACKET ;

// Words that a technician may want as a name. Verbs and the words that hold a sentence together stay reserved.
name
    : NAME
    | TOOL | SUPPLY | FASTENER | CLIP | CONNECTOR | LINE | BOND | OPTION | ENERGY | FLUID | CONTROL | GOAL
    | REST | BACKGROUND | EXPECT | THREAD | LENGTH | GRADE | DRIVE | TORQUE | SIZE | MASS | SPARE | SEALS
    | USES | SINGLE | CAPTIVE | WAIT | VERIFY | CHARGE | TAKES | ATTENDED | TIME | PEOPLE | HOW | PHOTO
    | STORE | PPE | LIVE | ISOLATED | OUT | FITTED | FULL | OFF | SLACK | SUPPORTED
    ;

position : name | INTEGER | ON | IN | TO | AT ;
