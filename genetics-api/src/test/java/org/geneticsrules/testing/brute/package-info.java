/**
 * The reference that engines are compared with: a second, slow and obvious reading of a model's document.
 *
 * <p>It takes the document as plain maps, lists and texts and shares nothing with the library but exact fractions. Wherever chance
 * decides, it goes through every way in which chance may decide, so it is for small models only. It trusts that the document is
 * valid; two deciding masks that disagree are reported all the same, because that is what the model's own check must prevent.
 *
 * <ol>
 *   <li>{@link org.geneticsrules.testing.brute.Choices} runs a process once for every way in which chance may decide.
 *   <li>{@link org.geneticsrules.testing.brute.Genome} lists alleles, genotypes and phases; {@link
 *       org.geneticsrules.testing.brute.Animal} is one animal with its strands.
 *   <li>{@link org.geneticsrules.testing.brute.Life} lets one animal live: its draws, own states, masks and looks at any stage.
 *   <li>{@link org.geneticsrules.testing.brute.Mating} makes gametes and kits, and loses some of them.
 *   <li>{@link org.geneticsrules.testing.brute.Litters} weighs parents that are only partly known, and what their kits tell.
 *   <li>{@link org.geneticsrules.testing.brute.Kindred} is a pedigree with its records, and {@link
 *       org.geneticsrules.testing.brute.Worlds} lists every way in which it may have come about.
 * </ol>
 *
 * <p>The language of questions and answers is text: a <b>genotype</b> maps every locus to {@code a/b}, allele ids in declared order,
 * or to the lone {@code a} where the animal has one strand, or to nothing ({@code ""}) where it has none; a <b>phase</b> maps a locus
 * to {@code a|b}, the alleles of the one and the other strand; a <b>stage</b> maps {@code week}, {@code moult} and {@code season} to
 * what is known of them; a <b>look</b> maps traits to shown states, and a trait about which the model makes no claim is absent; a
 * <b>sex</b> is {@code female} or {@code male}; a <b>step</b> is {@code conceived}, {@code born} or {@code scored}.
 */
package org.geneticsrules.testing.brute;
