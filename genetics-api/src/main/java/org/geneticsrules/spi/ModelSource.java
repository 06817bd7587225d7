package org.geneticsrules.spi;

import org.geneticsrules.document.Reference;

/**
 * Which plug-in served a model.
 *
 * @param provider the plug-in, with its checksum
 * @param model the full reference to the model
 */
public record ModelSource(ProviderDescriptor provider, Reference model) {}
