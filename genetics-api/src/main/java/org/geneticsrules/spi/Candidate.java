package org.geneticsrules.spi;

import java.util.function.Supplier;

/**
 * A plug-in that was found and not yet run.
 *
 * @param descriptor what its annotation says
 * @param start makes its provider; may throw anything
 */
record Candidate(ProviderDescriptor descriptor, Supplier<GeneticsProvider> start) {}
