/**
 * What tests of several packages share: random models, and the brute-force reference that engines are compared with.
 *
 * <ol>
 *   <li>{@link org.geneticsrules.testing.RandomModels} draws valid models from a seed.
 *   <li>{@link org.geneticsrules.testing.DocumentMaps} turns a model's document into plain maps, lists and texts.
 *   <li>{@link org.geneticsrules.testing.BruteForce} interprets those maps by listing everything there is, and shares no code with
 *       the library but its fractions.
 *   <li>{@link org.geneticsrules.testing.RandomPedigrees} draws families with their records, and {@link
 *       org.geneticsrules.testing.KnownPedigrees} lists some whose answers are known.
 * </ol>
 */
package org.geneticsrules.testing;
