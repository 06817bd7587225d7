package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;
import org.geneticsrules.trait.Trait;

/**
 * A checked set of rules of inheritance for the traits of a catalogue.
 *
 * <p>A model is data: two models with one document are the same model. It computes nothing; engines take it as an argument.
 *
 * <p>Immutable and thread-safe.
 */
public final class Model {

    private final String id;
    private final String version;
    private final Optional<String> title;
    private final Optional<Taxon> taxon;
    private final Optional<String> licence;
    private final ImmutableList<Reference> derivedFrom;
    private final Catalogue catalogue;
    private final ImmutableMap<String, Evidence> evidence;
    private final ImmutableMap<String, Locus> loci;
    private final ImmutableMap<String, LinkageGroup> groups;
    private final ImmutableMap<String, Viability> viability;
    private final ImmutableMap<String, TraitRule> rules;
    private final ImmutableMap<String, Mask> masks;
    private final ImmutableMap<String, ImmutableSet<String>> givingWay;
    private final ImmutableMap<String, Population> populations;
    private final ImmutableMap<String, String> notModelled;
    private final ImmutableMap<String, Statement> statements;
    private final SymbolIndex symbols;
    private final boolean distinguishesSex;
    private final BoxSpace genotypeSpace;
    private final String sha256;

    Model(ModelBuilder builder, Map<String, Locus> loci, Map<String, Population> populations, SymbolIndex symbols) {
        this.id = builder.id;
        this.version = builder.version;
        this.title = builder.title;
        this.taxon = builder.taxon;
        this.licence = builder.licence;
        this.derivedFrom = ImmutableList.copyOf(builder.derivedFrom);
        this.catalogue = builder.catalogue;
        this.evidence = ImmutableMap.copyOf(builder.evidence);
        this.loci = ImmutableMap.copyOf(loci);
        this.groups = ImmutableMap.copyOf(builder.groups);
        this.viability = ImmutableMap.copyOf(builder.viability);
        ImmutableMap.Builder<String, TraitRule> traitRules = ImmutableMap.builder();
        builder.traits.forEach((name, trait) -> traitRules.put(name, rule(trait)));
        this.rules = traitRules.buildOrThrow();
        this.masks = ImmutableMap.copyOf(builder.masks);
        ImmutableMap.Builder<String, ImmutableSet<String>> below = ImmutableMap.builder();
        masks.keySet().forEach(mask -> below.put(mask, below(mask)));
        this.givingWay = below.buildOrThrow();
        this.populations = ImmutableMap.copyOf(populations);
        this.notModelled = ImmutableMap.copyOf(builder.notModelled);
        this.symbols = symbols;
        this.distinguishesSex = anythingDependsOnSex();
        ImmutableMap.Builder<String, List<String>> genotypes = ImmutableMap.builder();
        if (distinguishesSex) {
            genotypes.put(Sex.VARIABLE, Sex.words());
        }
        loci.forEach((name, locus) -> genotypes.put(
                name, locus.pairs().stream().map(AllelePair::toString).toList()));
        this.genotypeSpace = BoxSpace.of(genotypes.buildOrThrow());
        this.statements = Statements.of(this);
        this.sha256 = Canonical.sha256(ModelDocument.of(this));
    }

    /**
     * Starts a model.
     *
     * @param id its id, for example {@code example.pea}
     * @param version its version
     * @param catalogue the traits it speaks about
     * @return an empty builder
     */
    public static ModelBuilder builder(String id, String version, Catalogue catalogue) {
        return new ModelBuilder(id, version, catalogue);
    }

    /**
     * Returns the id.
     *
     * @return the id
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
     * Returns the organism.
     *
     * @return the taxon, if stated
     */
    public Optional<Taxon> taxon() {
        return taxon;
    }

    /**
     * Returns the licence of the model's text.
     *
     * @return an SPDX identifier, if stated
     */
    public Optional<String> licence() {
        return licence;
    }

    /**
     * Returns what the model was made from by applying patches.
     *
     * @return the base, then the patches; empty for a model that stands by itself
     */
    public List<Reference> derivedFrom() {
        return derivedFrom;
    }

    /**
     * Returns the full reference by which answers and records name this model.
     *
     * @return id, version and the hash of the canonical document
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(sha256));
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
     * Returns the evidence that statements refer to.
     *
     * @return evidence by id
     */
    public Map<String, Evidence> evidence() {
        return evidence;
    }

    /**
     * Returns the loci.
     *
     * @return loci by id in declared order
     */
    public Map<String, Locus> loci() {
        return loci;
    }

    /**
     * Finds a locus.
     *
     * @param locus its id
     * @return the locus
     * @throws IllegalArgumentException if the model has no such locus
     */
    public Locus locus(String locus) {
        Locus found = loci.get(locus);
        if (found == null) {
            throw new IllegalArgumentException(
                    "model " + id + " has no locus \"" + locus + "\"; it has " + loci.keySet());
        }
        return found;
    }

    /**
     * Returns the linkage groups.
     *
     * @return groups by id in declared order; loci in none are autosomal and unlinked
     */
    public Map<String, LinkageGroup> groups() {
        return groups;
    }

    /**
     * Finds the linkage group of a locus.
     *
     * @param locus id of a locus
     * @return the group; empty if the locus is linked to no other
     */
    public Optional<LinkageGroup> groupOf(String locus) {
        return groups.values().stream()
                .filter(group -> group.loci().contains(locus))
                .findFirst();
    }

    /**
     * Returns the statements about viability.
     *
     * @return statements by id in declared order
     */
    public Map<String, Viability> viability() {
        return viability;
    }

    /**
     * Returns the genotypes of a locus with which an animal can be born and live, by the statements about that locus.
     *
     * @param locus id of a locus
     * @param sex the sex of the animal; if empty, genotypes with which either sex can live
     * @return genotypes in the order of the locus, without those of which none are born or none are scored
     * @throws IllegalArgumentException if there is no such locus
     */
    public Set<AllelePair> living(String locus, Optional<Sex> sex) {
        Locus at = locus(locus);
        Set<AllelePair> found = new LinkedHashSet<>();
        for (Sex one : sex.map(List::of).orElse(List.of(Sex.FEMALE, Sex.MALE))) {
            at.pairs(one).stream()
                    .filter(pair -> viability.values().stream()
                            .filter(stated ->
                                    stated.birth().isZero() || stated.scored().isZero())
                            .noneMatch(stated -> stated.concerns(locus, at.expression(pair, one), one)))
                    .forEach(found::add);
        }
        return ImmutableSet.copyOf(found);
    }

    /**
     * Tells whether anything in this model depends on the sex of an animal.
     *
     * @return true if a locus is sex-linked or shows differently in the sexes, viability differs, or a condition reads the sex
     */
    public boolean distinguishesSex() {
        return distinguishesSex;
    }

    private boolean anythingDependsOnSex() {
        return loci.values().stream()
                        .anyMatch(locus -> locus.dependsOnSex()
                                || locus.transmission().heterogametic().isPresent())
                || viability.values().stream().anyMatch(one -> one.sex().isPresent())
                || masks.values().stream().anyMatch(mask -> mask.when().names().contains(Sex.VARIABLE))
                || rules.values().stream()
                        .flatMap(rule -> rule.cases().stream())
                        .anyMatch(one -> one.when().names().contains(Sex.VARIABLE));
    }

    /**
     * Returns the rules of the modelled traits, inner ones included.
     *
     * @return rules by trait in declared order
     */
    public Map<String, TraitRule> rules() {
        return rules;
    }

    /**
     * Returns the traits that have a rule and can be seen.
     *
     * @return trait ids in declared order
     */
    public Set<String> visibleTraits() {
        return rules.values().stream()
                .filter(TraitRule::visible)
                .map(TraitRule::trait)
                .collect(ImmutableSet.toImmutableSet());
    }

    /**
     * Returns the states that a trait may have.
     *
     * @param trait a trait of the catalogue or an inner trait of this model
     * @return its states in declared order, empty if there is no such trait
     */
    public List<String> states(String trait) {
        TraitRule rule = rules.get(trait);
        return rule != null
                ? rule.states()
                : catalogue.trait(trait).map(Trait::states).orElse(ImmutableList.of());
    }

    /**
     * Returns the masks.
     *
     * @return masks by id in declared order
     */
    public Map<String, Mask> masks() {
        return masks;
    }

    /**
     * Tells whether one mask takes precedence over another, directly or through masks between.
     *
     * @param upper id of a mask
     * @param lower id of a mask
     * @return true if the lower gives way where both are active
     */
    public boolean isOver(String upper, String lower) {
        return givingWay.getOrDefault(upper, ImmutableSet.of()).contains(lower);
    }

    /**
     * Returns the named sets of founder frequencies.
     *
     * @return populations by id
     */
    public Map<String, Population> populations() {
        return populations;
    }

    /**
     * Returns why some traits of the catalogue have no rule here.
     *
     * @return reasons by trait; a trait with neither rule nor reason is simply not spoken of
     */
    public Map<String, String> notModelled() {
        return notModelled;
    }

    /**
     * Returns every statement that an answer can rest on.
     *
     * @return statements by pointer, in document order
     */
    public Map<String, Statement> statements() {
        return statements;
    }

    /** The sex, where it matters, and one variable per locus, whose values are the texts of its pairs. */
    BoxSpace genotypeSpace() {
        return genotypeSpace;
    }

    SymbolIndex symbols() {
        return symbols;
    }

    private TraitRule rule(TraitBuilder trait) {
        List<String> states = trait.innerStates.orElseGet(
                () -> catalogue.trait(trait.trait).map(Trait::states).orElse(ImmutableList.of()));
        return new TraitRule(
                trait.trait, trait.innerStates.isEmpty(), states, trait.cases, trait.otherwise, trait.evidence);
    }

    private ImmutableSet<String> below(String mask) {
        LinkedHashMap<String, Boolean> reached = new LinkedHashMap<>();
        collectBelow(mask, reached);
        return ImmutableSet.copyOf(reached.keySet());
    }

    private void collectBelow(String mask, Map<String, Boolean> reached) {
        Mask upper = masks.get(mask);
        if (upper != null) {
            upper.over().stream()
                    .filter(lower -> reached.put(lower, true) == null)
                    .forEach(lower -> collectBelow(lower, reached));
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Model that && reference().equals(that.reference());
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
