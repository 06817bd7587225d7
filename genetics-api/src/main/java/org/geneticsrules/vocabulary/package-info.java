/**
 * Vocabularies: what the people of one region call what they see, at one time and another.
 *
 * <p>A {@link org.geneticsrules.vocabulary.Vocabulary} is data, read against a catalogue of traits and no model. It lists {@linkplain
 * org.geneticsrules.vocabulary.Name names} by {@linkplain org.geneticsrules.vocabulary.Facet facet}: a coat has one name for its colour,
 * another for its white marks. A name has {@linkplain org.geneticsrules.vocabulary.Sense senses}, each used for some {@linkplain
 * org.geneticsrules.vocabulary.Period time}, and a sense is a union of looks, each a condition on traits, and perhaps on sex and season.
 * How two names stand to one another is never stated; it is worked out from what they mean.
 *
 * <p>Everything rests on one picture: all that an animal can look like, in either sex and every season, is a space, of which a name in a
 * sense covers a {@linkplain org.geneticsrules.trait.BoxSet set of boxes}. Looks are never listed.
 *
 * <p>{@link org.geneticsrules.vocabulary.Naming} goes from what was seen to names:
 *
 * <ol>
 *   <li>The senses in use on the date are taken; without a date, those that have no end. If the date is a month or a year, its days are
 *       gone through, those on which the same senses are in use but once: a name is certain or excluded if it is so on all of them, and
 *       too early if it is that or excluded on all; else it is possible.
 *   <li>Traits that cannot be told at the stage of life are left out of what was seen. The rest, with the season and the sex if they are
 *       known, is one box: all that the animal may look like.
 *   <li>A name is <i>certain</i> if that box lies within what the name covers in those of its senses that can be said already. It is
 *       <i>excluded</i> if they have no point in common.
 *   <li>In between, it is <i>possible</i> if there are states of the traits that can be told now that would make it certain whatever the
 *       others are; else it is <i>too early</i>. What to look at are the traits on which it depends: those of which a change of state alone
 *       leads into or out of the set.
 *   <li>What stands against an excluded name is a smallest set of seen traits that meets, for each look, one that contradicts it; of several
 *       the first in the order of the catalogue. How near the name was is another question: the fewest traits that contradict one look.
 * </ol>
 *
 * <p>{@link org.geneticsrules.vocabulary.Meaning} goes from a name to what it says as a record:
 *
 * <ol>
 *   <li>All its senses in use on the date are united, or on any day of it if it is a month or a year; without a date, all that it ever
 *       had, since it may have been said at any time.
 *   <li>Season and sex are fixed, if known, and then left out, as are traits that could not be told at the stage; what remains is what
 *       some animal so called may have looked like.
 *   <li>As evidence the set is listed over the traits on which it depends, and over no others.
 * </ol>
 *
 * <p>{@link org.geneticsrules.vocabulary.Conversion} goes from names to other names: what all names say together is compared with what
 * each name, or each combination of one name per facet, of the other vocabulary means. What such a name means besides is what gets lost.
 * {@link org.geneticsrules.vocabulary.Unnamed} takes away from what can occur all that has a name.
 */
@NullMarked
package org.geneticsrules.vocabulary;

import org.jspecify.annotations.NullMarked;
