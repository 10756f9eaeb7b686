// Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar.

module.exports = grammar({
  name: 'procscript',

  word: $ => $.identifier,

  externals: $ => [$._missing_name, $.plain_text, $._line_end],

  extras: $ => [/[\s\u00A0\uFEFF]/, $.comment, $.suppression],

  conflicts: $ => [
    [$.need],
    [$.verify_property],
    [$.way_property, $._word_position],
    [$.flag_property, $._word_position],
    [$.keep_property, $._word_position],
    [$.check_rule],
    [$.record_rule],
    [$.retorque_rule],
    [$.text_action],
    [$.record_action],
    [$.pause_action],
    [$.quantity],
  ],

  supertypes: $ => [$._property, $._clause, $._member, $._inline_clause, $._further_parameter, $._procedure_item, $._step, $._refit_rule, $._test_item],

  rules: {
    source_file: $ => repeat(choice($.use_directive, $.catalog_declaration, $.machine_declaration, $.procedure_declaration)),

    use_directive: $ => seq('use', $.text),

    catalog_declaration: $ => seq(
      choice('tool', 'supply', 'certificate', 'fastener', 'clip', 'connector', 'line', 'bond'),
      field('name', $._name),
      optional($.text),
      optional($.property_block),
    ),

    property_block: $ => seq('{', repeat(choice($._property, $._clause, $.refit_property, $.when_properties)), '}'),

    when_properties: $ => seq('when', $.test, $.property_block),

    _property: $ => choice(
      $.text_property,
      $.quantity_property,
      $.mass_property,
      $.torque_property,
      $.names_property,
      $.behind_property,
      $.way_property,
      $.renew_property,
      $.pattern_property,
      $.grip_property,
      $.people_property,
      $.thread_property,
      $.grade_property,
      $.pieces_property,
      $.uses_property,
      $.change_property,
      $.single_use_property,
      $.flag_property,
      $.reuse_property,
      $.verbs_property,
      $.keep_property,
      $.prevailing_property,
      $.verify_property,
      $.voltage_property,
      $.strip_property,
      $.needs_property,
      $.alert_property,
      $.figure_property,
    ),

    text_property: $ => seq(
      choice(
        'how',
        'photo',
        'check',
        'store',
        'ppe',
        'release',
        'engage',
        'prepare',
        'shutdown',
        'isolate',
        'lock',
        'bleed',
        'restore',
        'empty',
        'fill',
        'coating',
        'bag',
        'mark',
        'measured',
      ),
      $.text,
    ),

    quantity_property: $ => seq(
      choice(
        'length',
        'size',
        'spare',
        'wait',
        'charge',
        'takes',
        'attended',
        'time',
        'cure',
        'range',
        'reach',
        'height',
        'twist',
        'frequency',
      ),
      $.quantity,
    ),

    mass_property: $ => seq('mass', choice($.quantity, seq('unknown', 'because', $.text))),

    torque_property: $ => seq('torque', $.quantity, repeat(seq(',', $.quantity)), repeat(seq('+', $.quantity))),

    names_property: $ => seq(choice('drive', 'tool', 'hazard', 'after', 'certified', 'in'), $.reference, repeat(seq(',', $.reference))),

    behind_property: $ => seq('behind', $.hiders),

    way_property: $ => seq('way', choice(seq('behind', $.hiders), seq('needs', $.needs))),

    renew_property: $ => seq('renew', 'with', choice($.reference, 'none'), repeat(seq(',', choice($.reference, 'none')))),

    pattern_property: $ => seq('pattern', choice('star', 'listed', 'none', seq('inside', 'out'))),

    grip_property: $ => seq('grip', choice('good', 'fair', 'poor')),

    people_property: $ => seq('people', $.count),

    thread_property: $ => seq('thread', choice($.thread_value, 'locker')),

    grade_property: $ => seq('grade', $.grade_value),

    pieces_property: $ => seq(choice('seals', 'cap'), $.count, $.reference),

    uses_property: $ => seq('uses', $.quantity, 'of', $.reference),

    change_property: $ => seq('with', $.reference, choice('add', 'take'), $.quantity, optional(seq('of', $.reference))),

    single_use_property: $ => seq('single', 'use'),

    flag_property: $ => choice('captive', 'oiled', 'hoist', 'temporary', 'stretch', 'signed'),

    reuse_property: $ => seq('reuse', 'because', $.text),

    verbs_property: $ => seq('verbs', $.text, $.text),

    keep_property: $ => seq('keep', 'in', 'order'),

    prevailing_property: $ => seq('prevailing', $.limit),

    verify_property: $ => seq(
      'verify',
      $.text,
      optional($.instruments),
      optional(seq('at', choice($.reference, $.text))),
      optional(seq('expect', $.limit)),
      optional($.property_block),
    ),

    voltage_property: $ => seq('voltage', $.quantity, optional(choice('ac', 'dc'))),

    strip_property: $ => seq('strip', choice(seq('needs', $.needs), $.alert, $.figure)),

    needs_property: $ => seq('needs', $.needs),

    alert_property: $ => $.alert,

    figure_property: $ => $.figure,

    figure: $ => seq('figure', $.text, optional($.text)),

    _clause: $ => choice($.at_clause, $.names_clause, $.cover_clause),

    at_clause: $ => seq('at', $.text),

    names_clause: $ => seq(choice('to', 'on', 'carries'), choice($.reference, 'none'), repeat(seq(',', choice($.reference, 'none')))),

    cover_clause: $ => seq($.cover, optional($.property_block)),

    cover: $ => seq(choice('covered', 'locked'), 'by', $.count, field('kind', $._name), 'as', field('name', $.reference)),

    refit_property: $ => seq('refit', choice(seq('needs', $.needs), $.alert, $.figure, $.property_block)),

    thread_value: $ => choice(
      seq($.identifier, optional(seq('.', $.integer)), optional($.hand)),
      seq(
        $.integer,
        optional(seq(optional($.integer), '/', $.integer)),
        choice('-', '−'),
        choice($.integer, $.decimal),
        optional($.identifier),
        optional($.hand),
      ),
      seq($.screw_size, choice('-', '−'), $.integer, optional($.identifier), optional($.hand)),
      field('text', $.text),
    ),

    hand: $ => seq(optional(choice('-', '−')), 'LH'),

    grade_value: $ => choice($.number, seq($.identifier, optional(seq(choice('-', '−'), $.integer))), 'unknown', field('text', $.text)),

    needs: $ => seq($.need, repeat(seq(choice(',', 'or'), $.need))),

    hiders: $ => seq($.reference, repeat(seq(choice(',', 'or'), $.reference))),

    need: $ => seq($.reference, optional(choice(seq('at', $.position), $.need_state))),

    need_state: $ => choice('live', 'isolated', 'out', 'fitted', 'aside', 'empty', 'full', 'off', 'slack', 'supported'),

    machine_declaration: $ => seq('machine', field('name', $._name), optional($.text), $.member_block),

    member_block: $ => seq('{', repeat($._member), '}'),

    _member: $ => choice(
      $.option_declaration,
      $.energy_declaration,
      $.fluid_declaration,
      $.control_declaration,
      $.place_declaration,
      $.part_declaration,
      $.joint_declaration,
      $.aside_clause,
      $.each_members,
      $.when_members,
      $._property,
      $.refit_property,
    ),

    option_declaration: $ => seq('option', field('name', $._name), optional($.text)),

    energy_declaration: $ => seq('energy', field('name', $.reference), optional($.text), optional($.property_block)),

    fluid_declaration: $ => seq('fluid', field('name', $.reference), optional($.text), optional($.property_block)),

    control_declaration: $ => seq('control', field('name', $.reference), optional($.text), $.control_block),

    control_block: $ => seq(
      '{',
      optional(seq(choice($.position, alias($._word_position, $.position)), repeat(seq(',', $.position)))),
      repeat(choice($._property, $._clause, $.refit_property, $.when_properties)),
      '}',
    ),

    place_declaration: $ => seq('place', field('name', $.reference), optional($.text), 'room', 'for', $.count),

    part_declaration: $ => seq('part', field('name', $.reference), optional($.text), optional($.member_block)),

    joint_declaration: $ => seq(
      choice('held', 'wired', 'piped'),
      'by',
      $.count,
      field('kind', $._name),
      'as',
      field('name', $.reference),
      repeat($._inline_clause),
      optional(choice(repeat1($.inline_cover), $.property_block)),
    ),

    inline_cover: $ => seq($.cover, repeat($._inline_clause), optional($.property_block)),

    _inline_clause: $ => choice($.inline_at, $.inline_names),

    inline_at: $ => seq('at', $.text),

    inline_names: $ => seq(choice('to', 'on', 'carries'), choice($.reference, 'none')),

    aside_clause: $ => seq('aside', optional($.text)),

    each_members: $ => seq('each', $._name, 'in', $.values, $.member_block),

    when_members: $ => seq('when', $.test, $.member_block),

    values: $ => choice(seq($.integer, '..', $.integer), seq($.value, repeat(seq(',', $.value)))),

    value: $ => choice($._name, $.integer),

    test: $ => choice(seq('not', $._name), seq($._name, optional(seq('is', optional('not'), $.value)))),

    procedure_declaration: $ => seq(
      'procedure',
      field('name', $._name),
      optional($.parameters),
      optional($.text),
      'on',
      field('machine', $._name),
      repeat($.for_variants),
      $.procedure_block,
    ),

    for_variants: $ => seq(choice('with', 'without'), $._name, repeat(seq(',', $._name))),

    parameters: $ => seq('(', $.parameter, repeat(seq(',', $._further_parameter)), ')'),

    parameter: $ => seq($._name, 'in', $.first_values),

    _further_parameter: $ => choice($.value, $.parameter),

    first_values: $ => choice($._name, seq($.integer, optional(seq('..', $.integer)))),

    procedure_block: $ => seq('{', repeat($._procedure_item), '}'),

    _procedure_item: $ => choice($.goal, $.stage, $.do_call, $.work_block, $.refit_rules, $.each_items, $.when_items, $._property),

    goal: $ => seq('goal', $.verb, $.reference),

    stage: $ => seq('stage', $.text, $.step_block),

    do_call: $ => seq(
      'do',
      $._name,
      optional(seq('(', optional(seq($.value, repeat(seq(',', $.value)))), ')')),
      optional($.where_needed),
    ),

    where_needed: $ => seq('where', 'needed'),

    work_block: $ => seq('work', $.step_block),

    each_items: $ => seq('each', $._name, 'in', $.values, $.procedure_block),

    when_items: $ => seq('when', $.test, $.procedure_block),

    step_block: $ => seq('{', repeat($._step), '}'),

    _step: $ => choice(
      $.alert,
      $.refit_alert,
      $.strip_step,
      $.action,
      $.text_action,
      $.record_action,
      $.pause_action,
      $.discard,
      $.do_call,
      $.each_steps,
      $.when_steps,
    ),

    alert: $ => seq(choice('danger', 'warning', 'caution', 'notice'), $.text),

    refit_alert: $ => seq('refit', $.alert),

    strip_step: $ => seq('strip', choice($.alert, $.deed)),

    each_steps: $ => seq('each', $._name, 'in', $.values, $.step_block),

    when_steps: $ => seq('when', $.test, $.step_block),

    action: $ => seq(choice($.action_verb, 'snug'), $.deed),

    deed: $ => seq(
      optional(choice(seq($.amount, 'of'), $.pieces)),
      $.reference,
      optional(seq('to', $.position)),
      optional($.where_needed),
      optional($.background),
      optional($.property_block),
    ),

    pieces: $ => seq($.count, field('kind', $._name)),

    amount: $ => choice($.integer, 'rest'),

    verb: $ => choice('strip', $.action_verb),

    action_verb: $ => choice(
      'undo',
      'loosen',
      'release',
      'unplug',
      'disconnect',
      'cut',
      'aside',
      'remove',
      'set',
      'isolate',
      'empty',
      'support',
      'fasten',
      'tighten',
      'engage',
      'plug',
      'connect',
      'renew',
      'return',
      'fit',
      'restore',
      'fill',
      'unsupport',
      'replace',
      'repair',
      'clean',
      'inspect',
      'adjust',
      'verify',
    ),

    text_action: $ => seq(
      choice('measure', 'task', 'check'),
      $.text,
      optional($.instruments),
      optional(seq('expect', $.limit)),
      optional($.needs_clause),
      optional($.background),
      optional($.property_block),
    ),

    instruments: $ => seq('with', $.reference, repeat(seq(',', $.reference))),

    record_action: $ => seq('record', $.text, optional($.needs_clause), optional($.property_block)),

    pause_action: $ => seq('pause', $.text, optional($.needs_clause), optional($.property_block)),

    needs_clause: $ => seq(optional(choice('strip', 'refit')), 'needs', $.needs),

    background: $ => seq('in', 'background'),

    discard: $ => seq('discard', optional(seq($.amount, 'of')), $.reference, 'because', $.text),

    refit_rules: $ => seq('refit', choice(seq('needs', $.needs), $.rule_block)),

    rule_block: $ => seq('{', repeat($._refit_rule), '}'),

    _refit_rule: $ => choice(
      $.alert,
      $.order_rule,
      $.check_rule,
      $.record_rule,
      $.pause_rule,
      $.test_rule,
      $.snug_rule,
      $.retorque_rule,
      $.discard,
      $.each_rules,
      $.when_rules,
    ),

    each_rules: $ => seq('each', $._name, 'in', $.values, $.rule_block),

    when_rules: $ => seq('when', $.test, $.rule_block),

    order_rule: $ => seq($.verb, $.reference, optional(seq('to', $.position)), choice($.order, $.while_clause)),

    snug_rule: $ => seq('snug', $.reference, repeat(seq(',', $.reference)), optional($.order)),

    retorque_rule: $ => seq(
      'retorque',
      $.reference,
      repeat(seq(',', $.reference)),
      optional($.needs_clause),
      optional(
        choice(seq('before', $.order_verb, $.reference), seq('after', choice(seq($.order_verb, $.reference), $.text))),
      ),
    ),

    while_clause: $ => seq('while', $.reference, repeat(seq(',', $.reference)), 'open', 'because', $.text),

    check_rule: $ => seq(
      'check',
      $.text,
      optional($.instruments),
      optional(seq('expect', $.limit)),
      optional($.needs_clause),
      optional($.order),
      optional($.property_block),
    ),

    record_rule: $ => seq('record', $.text, optional($.needs_clause), optional($.order)),

    pause_rule: $ => seq('pause', $.text, $.order, optional($.property_block)),

    test_rule: $ => seq('test', $.text, optional($.order), $.test_block),

    test_block: $ => seq('{', repeat($._test_item), '}'),

    _test_item: $ => choice($.alert, $.power_clause, $.text_action, $.record_action, $.while_clause),

    power_clause: $ => seq('power', $.reference, repeat(seq(',', $.reference))),

    order: $ => seq(choice('before', 'after'), $.order_verb, $.reference, optional(seq('to', $.position))),

    order_verb: $ => choice($.verb, 'snug'),

    count: $ => $.integer,

    quantity: $ => seq($.number, optional($.unit), optional(seq(choice(choice('±', '+-', '+/-'), '..'), $.number, optional($.unit)))),

    limit: $ => seq(optional(choice(choice('<=', '≤'), choice('>=', '≥'), '<', '>')), $.quantity),

    number: $ => seq(
      optional(choice('-', '−')),
      choice($.decimal, seq($.integer, optional(choice(seq('/', $.integer), seq($.integer, '/', $.integer))))),
    ),

    unit: $ => choice(
      '%',
      seq('°', optional($.identifier)),
      seq($.unit_name, repeat(seq(choice('.', choice('·', '⋅'), '/'), $.unit_name))),
    ),

    unit_name: $ => choice($.identifier, 'in'),

    reference: $ => seq($._name, optional($.index)),

    index: $ => seq('[', $.value, repeat(seq(',', $.value)), ']'),

    position: $ => choice($._name, $.integer, 'on', 'in', 'to', 'at'),

    _word_position: $ => choice(
      alias('how', $.identifier),
      alias('photo', $.identifier),
      alias('store', $.identifier),
      alias('ppe', $.identifier),
      alias('prepare', $.identifier),
      alias('shutdown', $.identifier),
      alias('lock', $.identifier),
      alias('bleed', $.identifier),
      alias('coating', $.identifier),
      alias('bag', $.identifier),
      alias('mark', $.identifier),
      alias('measured', $.identifier),
      alias('length', $.identifier),
      alias('size', $.identifier),
      alias('spare', $.identifier),
      alias('wait', $.identifier),
      alias('charge', $.identifier),
      alias('takes', $.identifier),
      alias('attended', $.identifier),
      alias('time', $.identifier),
      alias('cure', $.identifier),
      alias('range', $.identifier),
      alias('reach', $.identifier),
      alias('height', $.identifier),
      alias('twist', $.identifier),
      alias('frequency', $.identifier),
      alias('mass', $.identifier),
      alias('torque', $.identifier),
      alias('drive', $.identifier),
      alias('tool', $.identifier),
      alias('hazard', $.identifier),
      alias('certified', $.identifier),
      alias('way', $.identifier),
      alias('pattern', $.identifier),
      alias('grip', $.identifier),
      alias('people', $.identifier),
      alias('thread', $.identifier),
      alias('grade', $.identifier),
      alias('seals', $.identifier),
      alias('cap', $.identifier),
      alias('uses', $.identifier),
      alias('with', $.identifier),
      alias('single', $.identifier),
      alias('captive', $.identifier),
      alias('oiled', $.identifier),
      alias('hoist', $.identifier),
      alias('temporary', $.identifier),
      alias('stretch', $.identifier),
      alias('signed', $.identifier),
      alias('reuse', $.identifier),
      alias('verbs', $.identifier),
      alias('keep', $.identifier),
      alias('prevailing', $.identifier),
      alias('verify', $.identifier),
      alias('voltage', $.identifier),
      alias('figure', $.identifier),
      alias('locked', $.identifier),
    ),

    // Where a name is due and a sentence begins instead, the scanner sees a name that is missing, so that the sentence is read.
    _name: $ => choice($.identifier, alias('rest', $.identifier), $._missing_name),

    identifier: _ => /[\p{L}\p{Nl}\p{No}_][\p{L}\p{Nl}\p{No}_0-9]*/,
    decimal: _ => /[0-9]+\.[0-9]+/,
    integer: _ => /[0-9]+/,
    screw_size: _ => /#[0-9]+/,

    // Most texts are one token of the scanner's; one with a placeholder or an escape has parts. Within a text that began with a
    // plain quote a typographic one is a character like any other.
    text: $ => choice(
      $.plain_text,
      seq('"', repeat(choice($._characters, $._brace, $.escape_sequence, $.placeholder)), choice(token.immediate('"'), $._line_end)),
      seq(
        /[\u201C-\u201F]/,
        repeat(choice($._unquoted, $._brace, $.escape_sequence, $.placeholder)),
        choice(token.immediate(/["\u201C-\u201F]/), $._line_end),
      ),
    ),
    _characters: _ => token.immediate(prec(1, /[^"\\{\r\n]+/)),
    _unquoted: _ => token.immediate(prec(1, /[^"\u201C-\u201F\\{\r\n]+/)),
    _brace: _ => token.immediate(prec(1, '{')),
    escape_sequence: _ => token.immediate(prec(1, /\\[^\r\n]?/)),
    placeholder: _ => token.immediate(prec(2, /\{[\p{L}_][\p{L}_0-9]*\}/)),

    comment: _ => /\/\/[^\r\n]*/,
    suppression: _ => token(prec(1, /\/\/[ \t]*proc:[ \t]*allow[ \t]+[\w-][^\r\n]*/)),
  },
});
