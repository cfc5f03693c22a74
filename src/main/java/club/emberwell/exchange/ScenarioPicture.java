package club.emberwell.exchange;

import java.util.List;

/**
 * What is drawn of a result of the invented club.
 *
 * @param of what is shown: the material, or the coating where it is removed
 * @param base the colour of its coating in the invented model, or null
 * @param at where the dose of each trial lies in the window: -1 the least that is right, 1 the most
 * @param caption as its author would write it, or null
 */
record ScenarioPicture(String of, String base, List<Double> at, String caption) {}
