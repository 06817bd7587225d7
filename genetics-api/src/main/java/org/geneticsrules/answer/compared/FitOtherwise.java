package org.geneticsrules.answer.compared;

import java.util.Optional;

/**
 * How well litters go with a model under another assumption.
 *
 * <p>Immutable and thread-safe.
 *
 * @param assumed what is assumed, for example {@code founders as in "many carriers"}
 * @param rejected whether the litters exclude the model then, or go badly with it
 * @param p the chance that litters like those tested, taken together, are no likelier than they are; none if none was tested
 * @param standardError of p if litters were drawn for it, else 0
 */
public record FitOtherwise(String assumed, boolean rejected, Optional<Double> p, double standardError) {}
