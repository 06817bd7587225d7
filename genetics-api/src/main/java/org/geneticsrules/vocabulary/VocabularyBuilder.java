package org.geneticsrules.vocabulary;

import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Catalogue;

/** Puts a vocabulary together. Obtained from {@link Vocabulary#builder}. Not thread-safe. */
public final class VocabularyBuilder {

    final String id;
    final String version;
    final Catalogue catalogue;
    Optional<Reference> catalogueReference = Optional.empty();
    Optional<String> title = Optional.empty();
    Optional<String> licence = Optional.empty();
    Optional<String> region = Optional.empty();
    Optional<String> language = Optional.empty();
    final Map<String, Evidence> evidence = new LinkedHashMap<>();
    final Map<String, Facet> facets = new LinkedHashMap<>();
    final Map<String, Name> names = new LinkedHashMap<>();

    VocabularyBuilder(String id, String version, Catalogue catalogue) {
        this.id = id;
        this.version = version;
        this.catalogue = catalogue;
    }

    /**
     * States the title.
     *
     * @param text the title
     * @return this
     */
    public VocabularyBuilder title(String text) {
        title = Optional.of(text);
        return this;
    }

    /**
     * States the licence of the vocabulary's text.
     *
     * @param spdx an SPDX licence identifier, for example {@code Apache-2.0}
     * @return this
     */
    public VocabularyBuilder licence(String spdx) {
        licence = Optional.of(spdx);
        return this;
    }

    /**
     * States where people speak so.
     *
     * @param text a region in words
     * @return this
     */
    public VocabularyBuilder region(String text) {
        region = Optional.of(text);
        return this;
    }

    /**
     * States the language of the names.
     *
     * @param tag a BCP 47 language tag, for example {@code en}
     * @return this
     */
    public VocabularyBuilder language(String tag) {
        language = Optional.of(tag);
        return this;
    }

    /**
     * States which catalogue the vocabulary was written against; it is refused if it is given another.
     *
     * @param reference id, version and perhaps hash of the catalogue
     * @return this
     */
    public VocabularyBuilder writtenFor(Reference reference) {
        catalogueReference = Optional.of(reference);
        return this;
    }

    /**
     * Adds evidence that names and senses can refer to.
     *
     * @param support the evidence
     * @return this
     * @throws IllegalArgumentException if evidence of this id was added already
     */
    public VocabularyBuilder evidence(Evidence support) {
        once("evidence", support.id(), evidence.putIfAbsent(support.id(), support) == null);
        return this;
    }

    /**
     * Adds a facet.
     *
     * @param facet the facet
     * @return this
     * @throws IllegalArgumentException if a facet of this id was added already
     */
    public VocabularyBuilder facet(Facet facet) {
        once("facet", facet.id(), facets.putIfAbsent(facet.id(), facet) == null);
        return this;
    }

    /**
     * Adds a name.
     *
     * @param name the name with its senses
     * @return this
     * @throws IllegalArgumentException if this very name was added already
     */
    public VocabularyBuilder name(Name name) {
        once("name", name.word(), names.putIfAbsent(name.word(), name) == null);
        return this;
    }

    private static void once(String what, String id, boolean isNew) {
        if (!isNew) {
            throw new IllegalArgumentException("the " + what + " \"" + id + "\" was added already");
        }
    }

    /**
     * Checks and returns the vocabulary.
     *
     * @return the vocabulary
     * @throws ProblemsException with all problems of the first stage that finds any: names and ids that are badly spelt; facets, traits,
     *     states, seasons and evidence that are not there, with the nearest known, or another catalogue than it was written for; names
     *     without senses, senses without looks, looks that allow no phenotype, senses that exclude none or were never in use, and words
     *     that mean two names of one facet at one time
     * @throws TooLargeException if the looks of a sense are too entangled to be compared
     */
    public Vocabulary build() {
        TraitSpace space = new TraitSpace(catalogue);
        Problems shape = new Problems(Stage.SHAPE);
        VocabularyChecks.shape(this, shape);
        shape.throwIfAny();
        Problems references = new Problems(Stage.REFERENCES);
        VocabularyChecks.references(this, space, references);
        references.throwIfAny();
        IdentityHashMap<Sense, BoxSet> meanings = new IdentityHashMap<>();
        for (Name name : names.values()) {
            for (Sense sense : name.senses().values()) {
                meanings.put(sense, space.union(sense.looks().values()));
            }
        }
        Problems meaning = new Problems(Stage.MEANING);
        VocabularyChecks.meaning(this, space, meanings, meaning);
        meaning.throwIfAny();
        return new Vocabulary(this, space, meanings);
    }
}
