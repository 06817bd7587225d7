/**
 * Answers and models as text and tables for people.
 *
 * <p>Words come first; letters of loci and alleles stand in the reasons and can be left out with
 * {@link org.geneticsrules.render.TextStyle#withoutLetters()}. {@link org.geneticsrules.render.AnswerText} puts an answer in the order
 * verdict, differing views, number, why, what would change it, cautions, evidence. {@link org.geneticsrules.render.SquareText} and
 * {@link org.geneticsrules.render.SquareHtml} show a Punnett square as a table with a header row and column.
 * {@link org.geneticsrules.render.ModelText} shows a model with its evidence, and {@link org.geneticsrules.render.HidingTable} what
 * each locus hides.
 *
 * <p>Everything here is a function from a value to a text: nothing is printed, and one value has one text.
 */
@NullMarked
package org.geneticsrules.render;

import org.jspecify.annotations.NullMarked;
