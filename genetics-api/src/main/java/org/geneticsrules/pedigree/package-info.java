/**
 * Animals and how they are related: what is recorded of each, litters with certain and uncertain parents, and kinship.
 *
 * <p>A {@link org.geneticsrules.pedigree.Pedigree} holds {@link org.geneticsrules.pedigree.Individual individuals}, each with what was
 * observed and tested, and {@link org.geneticsrules.pedigree.Litter litters}, which alone say who comes from whom. An individual is in
 * one litter at most; in none it is a founder. Loops of any kind may occur: mates may be related in as many ways as they please.
 *
 * <p>Nothing here depends on a model. Looks name traits of a catalogue, tests name loci and alleles, founders name populations; whether
 * a model knows them is asked with {@link org.geneticsrules.pedigree.Pedigree#problemsUnder}. So the same records can be held against
 * rival models.
 *
 * <p><b>Checks.</b> Building a pedigree reports all problems of the first stage that finds any:
 *
 * <ol>
 *   <li>shape: an id that is stated twice;
 *   <li>references: a parent, candidate, foster dam or kit that is not recorded;
 *   <li>meaning: an individual in two litters, a dam that is male or a sire that is female, a parent that is not older than its young, an
 *       individual among its own ancestors, counts that contradict one another, a date before birth, a broken trail of corrections.
 * </ol>
 *
 * <p><b>Names.</b> What an animal was called is kept as it was written ({@link org.geneticsrules.pedigree.CalledName}): a word, whose word
 * it is, when it was said. {@link org.geneticsrules.pedigree.NamedRecords} reads such names with the vocabularies at hand:
 *
 * <ol>
 *   <li>the vocabulary is found by its id, the last part of its id, or its region; the name by its words, whatever their capitals;
 *   <li>all that the name meant on the day, said of an animal of that sex, at that stage and in that season, is a set of looks; without a
 *       date it is all that the name ever meant;
 *   <li>what could not be told at the stage is left out of it, and so are traits that make no difference;
 *   <li>what is left becomes one more observation, that the animal had one of these looks, which remembers its name. Where nothing is left
 *       there is none.
 * </ol>
 *
 * <p>The name stays the record: it alone is written down, and read anew each time.
 *
 * <p><b>Corrections.</b> A record is corrected by {@link org.geneticsrules.pedigree.Pedigree#corrected}, which keeps what stood there
 * before, when, why and on whose word; {@link org.geneticsrules.pedigree.Pedigree#original} undoes all of it.
 *
 * <p><b>Kinship.</b> {@link org.geneticsrules.pedigree.Kinship} gives Wright's coefficients. Every individual is a node, and so is every
 * parent that is not certain: an unrecorded parent of a litter is a founder of its own, and a sire who is one of several candidates is a
 * <i>mixture</i> of them, one for the litter or one for each kit. With f the coefficient of kinship,
 *
 * <pre>
 *   f(i, j) = (f(dam of i, j) + f(sire of i, j)) / 2     where j is no descendant of i
 *   f(i, i) = (1 + f(dam of i, sire of i)) / 2
 *   f(m, j) = sum of share(s) f(s, j)                    over the candidates s of a mixture m
 *   f(m, m) = sum of share(s) f(s, s)
 * </pre>
 *
 * <p>and F(i) = f(dam of i, sire of i). This is the expectation over who the sires are (Henderson 1988, from memory). Exact coefficients
 * come from that recursion; those of whole registries from its factors, in doubles (Meuwissen and Luo 1992; Colleau 2002).
 *
 * <p><b>Kindreds.</b> {@link org.geneticsrules.pedigree.Kindreds} takes a pedigree apart into animals that litters connect: the members of
 * each litter are joined, a foster dam is not. Engines look at one after the other.
 *
 * <p><b>Privacy.</b> Ids are opaque, and there is no place for owners, breeders, addresses or the numbers of chips, which are personal
 * data. Who wants them keeps them elsewhere, under the same ids. Who looked at an animal or named it may be recorded, since it matters
 * where records are compared; it is written into documents and tables, and into no answer.
 *
 * <p>Everything here is immutable and thread-safe, builders excepted.
 */
@NullMarked
package org.geneticsrules.pedigree;

import org.jspecify.annotations.NullMarked;
