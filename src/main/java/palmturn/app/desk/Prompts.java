package palmturn.app.desk;

import palmturn.app.keys.KeyBindings;

/**
 * The window's ways to speak to the person in front of it.
 *
 * @param keys those that notices name
 */
public record Prompts(Notices notices, Questions questions, KeyBindings keys) {}
