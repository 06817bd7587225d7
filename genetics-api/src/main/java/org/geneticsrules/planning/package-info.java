/**
 * What to do next to tell models of inheritance apart: which look, test or mating is expected to tell most, what it costs in kits, and whether it can
 * tell them apart at all.
 *
 * <p>{@link org.geneticsrules.planning.Distinguishing} is the door. Step by step:
 *
 * <ol>
 *   <li><b>Same things.</b> Only what every model speaks of, for every animal, is looked at ({@link org.geneticsrules.comparison.SharedRecords}).
 *   <li><b>Suitable.</b> Animals recorded as sterile, vasectomised or neutered are not proposed for a mating, nor a look at a trait that cannot be told
 *       at that stage; the reason is told. Whether an animal is alive, well and old enough is not in the records: ask who keeps it.
 *   <li><b>Outcomes.</b> What is put into the pedigree as if it had been found is as likely as the ratio of the chances of all records with it
 *       and without, {@code P(outcome | records, model) = P(records, outcome | model) / P(records | model)}. So errors, earlier looks of the same
 *       animal, relatives and parents who are not known for certain count under each model as they do elsewhere
 *       ({@link org.geneticsrules.inference.Inference}).
 *   <li><b>Kits.</b> What the parents may carry together is listed with its chance given all records
 *       ({@link org.geneticsrules.inference.Inference#together}), and for each pair of genotypes the chance of each look of a kit that lives. Given
 *       the pair, kits are independent, so counts of kits are a mixture of multinomials; litter-mates, and litters of one couple, depend on one
 *       another through what the parents carry. Kits that are looked at live: what the parents may carry of whom no kit lives is left out, and
 *       the rest weighed anew; how many live is no evidence otherwise. Where none lives, the step is not proposed. Where the phase of a parent
 *       matters, or the pairs are too many, every count is a litter put into the pedigree instead.
 *   <li><b>What an outcome says.</b> For each ordered pair of models, the mean of the natural logarithm of the likelihood ratio if the first is
 *       true, {@code sum of P(o | A) ln (P(o | A) / P(o | B))} (Kullback and Leibler 1951, <i>On information and sufficiency</i>, Annals of
 *       Mathematical Statistics 22:79, from memory). It is 0 if and only if no outcome differs. If an outcome excludes B it is infinite; then the
 *       chance of such outcomes and the rest of the sum are told apart.
 *   <li><b>What is learnt.</b> The mutual information between model and outcome, {@code sum of b(A) P(o | A) log2 (P(o | A) / P(o))}, by what is
 *       believed of each model, b (Lindley 1956, <i>On a measure of the information provided by an experiment</i>, Annals of Mathematical
 *       Statistics 27:986, from memory). It is at most what is not known of the models, {@code -sum of b log2 b}.
 *   <li><b>How many kits.</b> The smallest number with which the likelihood ratio of all kits reaches the bar
 *       ({@link org.geneticsrules.comparison.ComparedModels#bar(double, int)}) with a stated chance, if a model is true: of this couple, in whole litters
 *       of this couple, and in litters of several jills by one sire. Looks that say the same of all models are counted as one, and the
 *       chances of all counts are summed. <i>Never</i> is an answer, and is proved: in the long run kits show which distribution
 *       they come from, and where both models have it, with what weight they have it is all that is left of the ratio
 *       ({@link org.geneticsrules.planning.KitsNeeded}).
 *   <li><b>How often.</b> {@link org.geneticsrules.planning.Power} draws whole plans of litters ({@link org.geneticsrules.simulation}), compares what
 *       would be written down of each, and counts how often the true model reached the bar at any time, how often a wrong one did, and after how
 *       many litters. So it answers for several couples, and for litters that are noticed for their kits, where no exact number is at hand.
 *   <li><b>Order.</b> Records, then DNA tests, then kits of matings that are planned in any case, then new matings; within each, what tells most first
 *       ({@link org.geneticsrules.planning.Effort}). No mating stands in front of a record, whatever it would tell.
 * </ol>
 *
 * <p>Two models that foretell the same looks of every genotype and every mating are told apart by no look
 * ({@link org.geneticsrules.planning.Distinguishing#toldApart}); the proof is that of {@link org.geneticsrules.hypothesis.Comparison}.
 *
 * <p>Numbers are not advice. A mating concerns the health of the jill and of the kits, and homes for them; ask a veterinarian, and keep to the law of
 * the place.
 */
@NullMarked
package org.geneticsrules.planning;

import org.jspecify.annotations.NullMarked;
