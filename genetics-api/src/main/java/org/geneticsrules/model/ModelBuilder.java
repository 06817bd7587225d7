package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;
import org.geneticsrules.trait.Trait;
import org.jspecify.annotations.Nullable;

/**
 * Puts a model together in Java; a file is read into the same builder, so both are checked alike.
 *
 * <pre>{@code
 * Model pea = Model.builder("example.pea", "1.0.0", catalogue)
 *         .locus("R", locus -> locus.alleles("R", "r").dominant("R", "r").shows("R", "round").shows("r", "wrinkled"))
 *         .trait("seed form", rule -> rule.when(Condition.where("R", "round"), "round").otherwise("wrinkled"))
 *         .build();
 * }</pre>
 *
 * <p>Not thread-safe.
 */
public final class ModelBuilder {

    final String id;
    final String version;
    final Catalogue catalogue;
    Optional<String> title = Optional.empty();
    Optional<Taxon> taxon = Optional.empty();
    Optional<String> licence = Optional.empty();
    Optional<Reference> catalogueReference = Optional.empty();
    List<Reference> derivedFrom = List.of();
    final Map<String, Evidence> evidence = new LinkedHashMap<>();
    final Map<String, LocusBuilder> loci = new LinkedHashMap<>();
    final Map<String, LinkageGroup> groups = new LinkedHashMap<>();
    final Map<String, Viability> viability = new LinkedHashMap<>();
    final Map<String, TraitBuilder> traits = new LinkedHashMap<>();
    final Map<String, Mask> masks = new LinkedHashMap<>();
    final Map<String, PopulationBuilder> populations = new LinkedHashMap<>();
    final Map<String, String> notModelled = new LinkedHashMap<>();
    final List<String> repeated = new ArrayList<>();

    ModelBuilder(String id, String version, Catalogue catalogue) {
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
    public ModelBuilder title(String text) {
        title = Optional.of(text);
        return this;
    }

    /**
     * States the organism.
     *
     * @param about the taxon
     * @return this
     */
    public ModelBuilder taxon(Taxon about) {
        taxon = Optional.of(about);
        return this;
    }

    /**
     * States the licence of the model's text.
     *
     * @param spdx an SPDX licence identifier, for example {@code Apache-2.0}
     * @return this
     */
    public ModelBuilder licence(String spdx) {
        licence = Optional.of(spdx);
        return this;
    }

    /**
     * States from which documents the model was made.
     *
     * @param documents the base model, then the patches that were applied to it
     * @return this
     */
    public ModelBuilder derivedFrom(List<Reference> documents) {
        derivedFrom = ImmutableList.copyOf(documents);
        return this;
    }

    /**
     * States which catalogue the model was written against; the model is refused if it is given another.
     *
     * @param reference id, version and perhaps hash of the catalogue
     * @return this
     */
    public ModelBuilder writtenFor(Reference reference) {
        catalogueReference = Optional.of(reference);
        return this;
    }

    /**
     * Adds evidence that statements can refer to.
     *
     * @param support the evidence
     * @return this
     */
    public ModelBuilder evidence(Evidence support) {
        once("evidence", support.id(), evidence.put(support.id(), support));
        return this;
    }

    /**
     * Adds a locus.
     *
     * @param locus its id
     * @param describe fills in the description
     * @return this
     */
    public ModelBuilder locus(String locus, Consumer<LocusBuilder> describe) {
        LocusBuilder builder = new LocusBuilder(locus);
        describe.accept(builder);
        once("locus", locus, loci.put(locus, builder));
        return this;
    }

    /**
     * Adds a locus as another model states it. How it is handed down is stated by this model's groups.
     *
     * @param locus a locus of a model
     * @return this
     */
    public ModelBuilder locus(Locus locus) {
        return locus(locus.id(), described -> Restated.locus(locus, described));
    }

    /**
     * Adds a linkage group.
     *
     * @param group the group, whose loci are in no other group
     * @return this
     */
    public ModelBuilder group(LinkageGroup group) {
        once("group", group.id(), groups.put(group.id(), group));
        return this;
    }

    /**
     * Adds a statement about viability.
     *
     * @param statement the statement
     * @return this
     */
    public ModelBuilder viability(Viability statement) {
        once("viability", statement.id(), viability.put(statement.id(), statement));
        return this;
    }

    /**
     * Adds the rule of a trait.
     *
     * @param trait id of the trait
     * @param describe fills in the description
     * @return this
     */
    public ModelBuilder trait(String trait, Consumer<TraitBuilder> describe) {
        TraitBuilder builder = new TraitBuilder(trait);
        describe.accept(builder);
        once("trait", trait, traits.put(trait, builder));
        return this;
    }

    /**
     * Adds the rule of a trait as another model states it.
     *
     * @param rule a rule of a model
     * @return this
     */
    public ModelBuilder trait(TraitRule rule) {
        return trait(rule.trait(), described -> Restated.trait(rule, described));
    }

    /**
     * Adds a mask.
     *
     * @param mask the mask
     * @return this
     */
    public ModelBuilder mask(Mask mask) {
        once("mask", mask.id(), masks.put(mask.id(), mask));
        return this;
    }

    /**
     * Adds a population.
     *
     * @param population its id
     * @param describe fills in the description
     * @return this
     */
    public ModelBuilder population(String population, Consumer<PopulationBuilder> describe) {
        PopulationBuilder builder = new PopulationBuilder(population);
        describe.accept(builder);
        once("population", population, populations.put(population, builder));
        return this;
    }

    /**
     * Adds a population as another model states it. Alleles of this model of which it has none have a frequency of 0.
     *
     * @param population a population of a model
     * @return this
     */
    public ModelBuilder population(Population population) {
        return population(population.id(), described -> Restated.population(population, described));
    }

    /**
     * States why the model makes no claim about a trait of the catalogue.
     *
     * @param trait id of the trait
     * @param reason the reason, in a sentence
     * @return this
     */
    public ModelBuilder notModelled(String trait, String reason) {
        notModelled.put(trait, reason);
        return this;
    }

    /**
     * Checks what was stated and returns the model.
     *
     * @return the model
     * @throws ProblemsException with every problem of the first stage of checking that found any
     */
    public Model build() {
        return draft().model();
    }

    /**
     * Checks all but whether statements contradict each other, and returns what was stated together with the contradictions.
     *
     * @return a draft, for a report on an unfinished model
     * @throws ProblemsException with every problem of the first stage of checking that found any, contradictions apart
     */
    public Draft draft() {
        Problems shape = new Problems(Stage.SHAPE);
        populations.values().forEach(population -> population.complete(loci));
        repeated.forEach(what -> shape.add("duplicate-id", "", what + " is stated twice"));
        NameChecks.shape(this, shape);
        shape.throwIfAny();
        Problems references = new Problems(Stage.REFERENCES);
        new ReferenceChecks(this, references).run();
        references.throwIfAny();
        Problems meaning = new Problems(Stage.MEANING);
        Map<String, Locus> decided = new LinkedHashMap<>();
        SymbolIndex symbols = SymbolIndex.of(loci);
        loci.forEach((name, locus) -> decided.put(name, decide(locus, symbols, meaning)));
        Map<String, Population> founders = new LinkedHashMap<>();
        populations.forEach((name, population) -> population.build(meaning).ifPresent(p -> founders.put(name, p)));
        new GroupChecks(this, meaning).meaning();
        new ViabilityChecks(this, meaning).meaning();
        new CaseChecks(this, meaning).meaning();
        MeaningChecks.circles(this, meaning);
        meaning.throwIfAny();
        Model model = new Model(this, decided, founders, symbols);
        new MeaningChecks(model, meaning).run();
        return new Draft(model, meaning.list());
    }

    private Locus decide(LocusBuilder locus, SymbolIndex symbols, Problems problems) {
        Transmission transmission = transmission(locus.id);
        Map<Sex, Map<AllelePair, DominanceTable.Decision>> tables = new EnumMap<>(Sex.class);
        for (Sex sex : Sex.values()) {
            boolean repeated = sex == Sex.MALE && locus.bySex.isEmpty();
            tables.put(
                    sex,
                    new DominanceTable(locus, sex, transmission, symbols)
                            .decide(repeated ? new Problems(Stage.MEANING) : problems));
        }
        return new Locus(locus, transmission, tables);
    }

    /** The way in which a locus is handed down: that of its group, if it is in one. */
    Transmission transmission(String locus) {
        return groups.values().stream()
                .filter(group -> group.loci().contains(locus))
                .map(LinkageGroup::transmission)
                .findFirst()
                .orElse(Transmission.AUTOSOMAL);
    }

    /** The states of a trait: those of an inner trait, else those that the catalogue lists. */
    Optional<List<String>> statesOf(String trait) {
        TraitBuilder rule = traits.get(trait);
        Optional<List<String>> inner = rule == null ? Optional.empty() : rule.innerStates;
        return inner.isPresent() ? inner : catalogue.trait(trait).map(Trait::states);
    }

    private void once(String kind, String name, @Nullable Object before) {
        if (before != null) {
            repeated.add(kind + " \"" + name + "\"");
        }
    }

    /** Describes a population while a model is being built. Not thread-safe. */
    public static final class PopulationBuilder {
        final String id;
        Optional<String> title = Optional.empty();
        final Map<String, Map<String, Probability>> frequencies = new LinkedHashMap<>();
        Optional<String> evidence = Optional.empty();
        boolean anew;

        PopulationBuilder(String id) {
            this.id = id;
        }

        /**
         * States words for the population.
         *
         * @param text the title
         * @return this
         */
        public PopulationBuilder title(String text) {
            title = Optional.of(text);
            return this;
        }

        /**
         * States the frequency of an allele.
         *
         * @param locus id of the locus
         * @param allele id of the allele
         * @param frequency its share of the alleles at that locus
         * @return this
         */
        public PopulationBuilder frequency(String locus, String allele, Probability frequency) {
            frequencies.computeIfAbsent(locus, name -> new LinkedHashMap<>()).put(allele, frequency);
            return this;
        }

        /**
         * States the evidence.
         *
         * @param support id of the evidence
         * @return this
         */
        public PopulationBuilder evidence(String support) {
            evidence = Optional.of(support);
            return this;
        }

        /** A population that is stated anew no longer names the alleles that it does not have. */
        private void complete(Map<String, LocusBuilder> loci) {
            if (anew) {
                frequencies.forEach((locus, stated) -> {
                    LocusBuilder described = loci.get(locus);
                    if (described != null) {
                        described.alleles.keySet().forEach(allele -> stated.putIfAbsent(allele, Probability.ZERO));
                    }
                });
            }
        }

        private Optional<Population> build(Problems problems) {
            return MeaningChecks.frequencies(this, problems)
                    .map(distributions -> new Population(id, title, distributions, evidence));
        }
    }
}
