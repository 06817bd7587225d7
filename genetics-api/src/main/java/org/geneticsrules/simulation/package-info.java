/**
 * Litters and pedigrees drawn from a model of inheritance, for lessons and for studies of what records can tell.
 *
 * <p>{@link org.geneticsrules.simulation.Simulation} is the door. A result holds the records, as a breeder would have written them down, and
 * the truth behind them. How an animal comes about (gene dropping: MacCluer, VandeBerg, Read &amp; Ryder 1986, Zoo Biology 5:147; from
 * memory):
 *
 * <ol>
 *   <li><b>Founders</b> ({@code FounderDraw}) are drawn from the genotypes that are left for them, weighed by Hardy-Weinberg proportions of a
 *       population times the chance to live. The genotypes are disjoint boxes, so first a box is drawn and then each locus by itself.
 *       Heterozygous loci of unknown phase lie either way with 1/2 each.
 *   <li><b>Gametes</b> ({@code Meiosis}) are read off two strands: either first; at each further locus of a linkage group the other with the
 *       recombination fraction of that sex, or as a pattern of crossovers says that is drawn for the group. An allele may mutate on the
 *       way. Chromosomes on which a kit of that sex has nothing pass nothing.
 *   <li><b>Birth and scoring</b> ({@code Conception}): a kit that is conceived is lost with the chances that the model states, counted, and
 *       replaced. So those left are distributed as P(g | sire, dam, lives) = M(g) v(g) / Z. When many are lost in a row, Z is worked out,
 *       exactly 0 if no kit can live: such parents are drawn anew, or refused.
 *   <li><b>A life</b> ({@code Lives}): each draw of an animal - a case by chance, the residual of a threshold, the steps of a progression
 *       from one count to the next - is made once, when it is first needed, and holds for all looks.
 *   <li><b>Records</b> ({@code Recorder}) name the traits asked for as far as they can be told at that stage and in that light, of those
 *       animals that somebody looked at, with errors where such are named. DNA tests report the genotype, or another.
 *   <li><b>Structure</b>: one mating many times ({@code Litters}); couples with their litters ({@code Couples}); a pedigree, from parents to young, with sires drawn where they are not
 *       certain ({@code Drop}); or matings left to chance ({@code Kennels}).
 *   <li><b>Ascertainment</b> ({@code Selection}): where only litters are heard of that a kit brought to notice, by what was written down of
 *       it, or whose parents were chosen by an earlier kit, which is drawn as well and not recorded, all else is drawn and dropped, and told how often. Each litter drawn says how it came to be recorded
 *       ({@link org.geneticsrules.pedigree.Ascertainment}), so that it is judged as one of those that could have been.
 * </ol>
 *
 * <p>Chance is a parameter ({@link org.geneticsrules.simulation.Randomness}): a generator of {@code java.util.random} by its name, and its
 * seed. Only whole random longs are taken from it, and chances are turned into floating point here, so the same seed draws the same animals
 * on every JDK. No other package draws at random but the sampler of {@code inference}, which takes a seed as well.
 *
 * <p>A drawn animal shows what a model says, and no more. Matings that happen here by chance, of close relatives or of animals whose young are
 * lost, are no advice.
 */
@NullMarked
package org.geneticsrules.simulation;

import org.jspecify.annotations.NullMarked;
