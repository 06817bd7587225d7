package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Phenotype;

/**
 * What the people of one region call what they see: names with what they mean, read against a catalogue of traits. No rule of
 * inheritance is needed for it.
 *
 * <pre>{@code
 * Vocabulary names = Vocabulary.builder("example.names", "1.0.0", catalogue)
 *         .facet(Facet.of("colour"))
 *         .name(Name.of("sandy", "colour")
 *                 .withSynonyms("champagne")
 *                 .withSense(Sense.of("usual").withLook("sandy", Condition.where("dilution", "sandy"))))
 *         .build();
 * }</pre>
 *
 * <p>Two vocabularies are equal if they say the same, in whatever order.
 *
 * <p>Immutable and thread-safe.
 */
public final class Vocabulary {

    private final String id;
    private final String version;
    private final Catalogue catalogue;
    private final Optional<String> title;
    private final Optional<String> licence;
    private final Optional<String> region;
    private final Optional<String> language;
    private final ImmutableMap<String, Evidence> evidence;
    private final ImmutableMap<String, Facet> facets;
    private final ImmutableMap<String, Name> names;
    private final TraitSpace space;

    /** By the very senses of {@link #names}, since comparing senses by content takes as long as going through their looks. */
    private final IdentityHashMap<Sense, BoxSet> meanings;

    private final String sha256;

    Vocabulary(VocabularyBuilder builder, TraitSpace space, IdentityHashMap<Sense, BoxSet> meanings) {
        this.id = builder.id;
        this.version = builder.version;
        this.catalogue = builder.catalogue;
        this.title = builder.title;
        this.licence = builder.licence;
        this.region = builder.region;
        this.language = builder.language;
        this.evidence = ImmutableMap.copyOf(builder.evidence);
        this.facets = ImmutableMap.copyOf(builder.facets);
        this.names = ImmutableMap.copyOf(builder.names);
        this.space = space;
        this.meanings = meanings;
        this.sha256 = Canonical.sha256(VocabularyDocument.of(this));
    }

    /**
     * Starts a vocabulary.
     *
     * @param id its id
     * @param version its version
     * @param catalogue the traits that its names speak of
     * @return an empty builder
     */
    public static VocabularyBuilder builder(String id, String version, Catalogue catalogue) {
        return new VocabularyBuilder(id, version, catalogue);
    }

    /**
     * Returns the id.
     *
     * @return the id, for example {@code example.names}
     */
    public String id() {
        return id;
    }

    /**
     * Returns the version.
     *
     * @return the version
     */
    public String version() {
        return version;
    }

    /**
     * Returns the title.
     *
     * @return the title, if stated
     */
    public Optional<String> title() {
        return title;
    }

    /**
     * Returns the licence of its text.
     *
     * @return an SPDX licence identifier, if stated
     */
    public Optional<String> licence() {
        return licence;
    }

    /**
     * Returns where people speak so.
     *
     * @return a region in words, if stated
     */
    public Optional<String> region() {
        return region;
    }

    /**
     * Returns the language of the names.
     *
     * @return a BCP 47 language tag, for example {@code en}, if stated
     */
    public Optional<String> language() {
        return language;
    }

    /**
     * Returns the catalogue of traits.
     *
     * @return the catalogue
     */
    public Catalogue catalogue() {
        return catalogue;
    }

    /**
     * Returns the evidence that names and senses refer to.
     *
     * @return evidence by id, in declared order, unmodifiable
     */
    public Map<String, Evidence> evidence() {
        return evidence;
    }

    /**
     * Returns what names speak of.
     *
     * @return facets by id, in declared order, unmodifiable
     */
    public Map<String, Facet> facets() {
        return facets;
    }

    /**
     * Returns the names.
     *
     * @return names by their word, in declared order, unmodifiable
     */
    public Map<String, Name> names() {
        return names;
    }

    /**
     * Returns the names that speak of one thing.
     *
     * @param facet id of a facet
     * @return names in declared order
     */
    public List<Name> names(String facet) {
        return names.values().stream()
                .filter(name -> name.facet().equals(facet))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Finds names by what they are called. Capitals and blanks do not matter.
     *
     * @param word a name or a synonym
     * @return the names that it may mean, in declared order; several only if they differ in facet or in time
     */
    public List<Name> find(String word) {
        String wanted = Words.folded(word);
        return names.values().stream()
                .filter(name -> name.words().stream().map(Words::folded).anyMatch(wanted::equals))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the support for a sense.
     *
     * @param name a name of this vocabulary
     * @param sense one of its senses
     * @return the evidence of the sense, or else of the name, if stated
     */
    public Optional<Evidence> support(Name name, Sense sense) {
        return sense.evidence().or(name::evidence).map(key -> Objects.requireNonNull(evidence.get(key)));
    }

    /**
     * Returns how strongly a sense is supported.
     *
     * @param name a name of this vocabulary
     * @param sense one of its senses
     * @return the grade of its evidence; conjecture if it has none
     */
    public Grade grade(Name name, Sense sense) {
        return support(name, sense).map(Evidence::grade).orElse(Grade.CONJECTURE);
    }

    /**
     * Returns the variables that sets of looks range over.
     *
     * @return every trait of the catalogue with its states, the sex and, if the catalogue has seasons, the season
     */
    public BoxSpace space() {
        return space.boxes;
    }

    /**
     * Returns the set of all that agrees with one of some looks.
     *
     * @param looks phenotypes, each of which may say nothing of some traits
     * @return a set in {@link #space()}
     * @throws ProblemsException if one names an unknown trait or state, with the nearest known
     */
    public BoxSet setOf(Collection<Phenotype> looks) {
        looks.forEach(catalogue::check);
        boolean alike = looks.stream().map(Phenotype::traits).distinct().count() == 1;
        List<Phenotype> distinct = looks.stream().distinct().toList();
        var conditions = distinct.stream()
                .map(look -> TraitSpace.condition(look.asMap()))
                .toList();
        return alike ? space.boxes.ofDisjoint(conditions) : space.union(conditions);
    }

    /**
     * Returns the full reference to this vocabulary.
     *
     * @return id, version and hash of the canonical form
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(sha256));
    }

    /**
     * Returns the document form.
     *
     * @return a document of kind {@code vocabulary}, format version 0
     */
    public Node toDocument() {
        return VocabularyDocument.of(this);
    }

    TraitSpace traitSpace() {
        return space;
    }

    /** What one of the senses of its names means. */
    BoxSet meaning(Sense sense) {
        return Objects.requireNonNull(meanings.get(sense));
    }

    /** What names in some of their senses mean. */
    BoxSet meaning(Collection<Sense> senses) {
        BoxSet all = space.boxes.nothing();
        for (Sense sense : senses) {
            all = all.or(meaning(sense));
        }
        return all;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Vocabulary that && reference().equals(that.reference());
    }

    @Override
    public int hashCode() {
        return sha256.hashCode();
    }

    /** Returns {@code id version}. */
    @Override
    public String toString() {
        return id + " " + version;
    }
}
