package org.geneticsrules.comparison;

/**
 * A couple with litters that nothing brought to notice, as numbers of {@link Kinds}: what is asked of very many couples under very many models
 * need not look at their records again.
 *
 * @param sire the sire's number
 * @param dam the dam's
 * @param litters for each litter, in turn, those of its kits
 * @param born for each litter, that of a kit of which nothing is recorded
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record NumberedCouple(int sire, int dam, int[][] litters, int[] born) {}
