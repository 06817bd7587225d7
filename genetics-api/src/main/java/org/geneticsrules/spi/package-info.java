/**
 * Plug-ins: where catalogues, models, patches, cautions and vocabularies come from, and the registry that serves them.
 *
 * <p>A plug-in is a jar with a {@link org.geneticsrules.spi.GeneticsProvider}, which lists and opens documents. What it is, id, version,
 * taxon, licence, is told by the annotation {@link org.geneticsrules.spi.Plugin}, so that a program can choose among plug-ins before
 * anything of them runs. The {@link org.geneticsrules.spi.Registry} is made from an explicit list, or by discovery on the class path, in
 * a class loader or in a module layer. It is made eagerly, in these steps:
 *
 * <ol>
 *   <li>The descriptors are read. Two plug-ins of one id and version are an error that names both jars; neither is served.
 *   <li>Each wanted plug-in is instantiated, and all its documents are read and checked.
 *   <li>References between documents are followed; a model or a vocabulary of one plug-in may be about a catalogue of another, and a
 *       patch may be for a model of another.
 *   <li>A plug-in of which anything failed is not served at all, so that no model is ever served without the cautions that belong to it.
 *       What rests on its catalogues or models fails in turn. The others are served, and every failure is listed.
 * </ol>
 *
 * <p>Nothing depends on the order in which plug-ins are found, and nothing is static: two registries know nothing of each other.
 *
 * <p>Reading documents needs the library that {@link org.geneticsrules.json} needs; who builds models in code needs no registry.
 */
@NullMarked
package org.geneticsrules.spi;

import org.jspecify.annotations.NullMarked;
