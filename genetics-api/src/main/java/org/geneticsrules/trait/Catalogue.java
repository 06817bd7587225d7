package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * The traits that rival models, names and records share.
 *
 * <pre>{@code
 * Catalogue catalogue = Catalogue.builder("example.traits", "1.0.0")
 *         .trait("seed form", "round", "wrinkled")
 *         .build();
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Catalogue {

    private final String id;
    private final String version;
    private final Optional<String> title;
    private final Optional<Taxon> taxon;
    private final ImmutableList<String> seasons;
    private final ImmutableList<String> lights;
    private final ImmutableMap<String, Trait> traits;
    private final String sha256;

    private Catalogue(Builder builder) {
        this.id = builder.id;
        this.version = builder.version;
        this.title = builder.title;
        this.taxon = builder.taxon;
        this.seasons = ImmutableList.copyOf(builder.seasons);
        this.lights = ImmutableList.copyOf(builder.lights);
        this.traits = ImmutableMap.copyOf(builder.traits);
        this.sha256 = Canonical.sha256(CatalogueDocument.of(this));
    }

    /**
     * Starts a catalogue.
     *
     * @param id its id
     * @param version its version
     * @return an empty builder
     */
    public static Builder builder(String id, String version) {
        return new Builder(id, version);
    }

    /**
     * Returns the id.
     *
     * @return the id, for example {@code example.traits}
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
     * @return the title, if one is stated
     */
    public Optional<String> title() {
        return title;
    }

    /**
     * Returns the organism it is about.
     *
     * @return the taxon, if one is stated
     */
    public Optional<Taxon> taxon() {
        return taxon;
    }

    /**
     * Returns the seasons that conditions and stages of life may name.
     *
     * @return seasons in declared order; empty if nothing depends on the season
     */
    public List<String> seasons() {
        return seasons;
    }

    /**
     * Returns the lights in which an animal may be said to have been looked at.
     *
     * @return words in declared order; empty if no trait depends on the light
     */
    public List<String> lights() {
        return lights;
    }

    /**
     * Returns the full reference to this catalogue.
     *
     * @return id, version and hash of the canonical form
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(sha256));
    }

    /**
     * Returns the traits.
     *
     * @return traits by id in declared order, unmodifiable
     */
    public Map<String, Trait> traits() {
        return traits;
    }

    /**
     * Finds a trait.
     *
     * @param trait its id
     * @return the trait, or empty if the catalogue has none of this id
     */
    public Optional<Trait> trait(String trait) {
        return Optional.ofNullable(traits.get(trait));
    }

    /**
     * Compares a description with the catalogue.
     *
     * @param phenotype a full or partial phenotype
     * @return the same phenotype, in catalogue order
     * @throws ProblemsException if it names an unknown trait or state, with the nearest known
     */
    public Phenotype check(Phenotype phenotype) {
        Problems problems = new Problems(Stage.REFERENCES);
        phenotype.asMap().forEach((name, state) -> {
            Trait trait = traits.get(name);
            if (trait == null) {
                problems.unknown("unknown-trait", "", "trait", name, traits.keySet());
            } else if (!trait.states().contains(state)) {
                problems.unknown("unknown-state", "", "state of " + name, state, trait.states());
            }
        });
        problems.throwIfAny();
        Map<String, String> ordered = new LinkedHashMap<>();
        for (String trait : traits.keySet()) {
            phenotype.state(trait).ifPresent(state -> ordered.put(trait, state));
        }
        return Phenotype.from(ordered);
    }

    /**
     * Compares a stage of life with the catalogue.
     *
     * @param stage a stage
     * @return the same stage
     * @throws ProblemsException if it names an unknown season, with the nearest known
     */
    public LifeStage check(LifeStage stage) {
        Problems problems = new Problems(Stage.REFERENCES);
        stage.season()
                .filter(season -> !seasons.contains(season))
                .ifPresent(season -> problems.unknown("unknown-season", "", "season", season, seasons));
        problems.throwIfAny();
        return stage;
    }

    /**
     * Compares the light of a look with the catalogue.
     *
     * @param light a word for a light
     * @return the same word
     * @throws ProblemsException if the catalogue has no such light, with the nearest known
     */
    public String checkLight(String light) {
        if (!lights.contains(light)) {
            throw new ProblemsException(
                    Problems.unknown(Stage.REFERENCES, "unknown-light", "", "light", light, lights));
        }
        return light;
    }

    /**
     * Tells whether a trait can be told at a stage of life.
     *
     * @param trait id of a trait
     * @param stage when the animal is looked at
     * @return yes, no, or unknown if the stage does not state the count that matters
     * @throws IllegalArgumentException if the catalogue has no such trait
     */
    public Judgeable judgeable(String trait, LifeStage stage) {
        return trait(trait)
                .orElseThrow(() -> new IllegalArgumentException(
                        "catalogue " + id + " has no trait \"" + trait + "\"; it has " + traits.keySet()))
                .judgeable(stage);
    }

    /** Returns {@code id version}. */
    @Override
    public String toString() {
        return id + " " + version;
    }

    /** Puts a catalogue together. Not thread-safe. */
    public static final class Builder {
        private static final Set<String> RESERVED = ImmutableSet.of(Sex.VARIABLE, LifeStage.SEASON);

        private final String id;
        private final String version;
        private Optional<String> title = Optional.empty();
        private Optional<Taxon> taxon = Optional.empty();
        private final List<String> seasons = new ArrayList<>();
        private final List<String> lights = new ArrayList<>();
        private final Map<String, Trait> traits = new LinkedHashMap<>();

        private Builder(String id, String version) {
            this.id = id;
            this.version = version;
        }

        /**
         * States the title.
         *
         * @param text the title
         * @return this
         */
        public Builder title(String text) {
            title = Optional.of(text);
            return this;
        }

        /**
         * States the organism.
         *
         * @param about the taxon
         * @return this
         */
        public Builder taxon(Taxon about) {
            taxon = Optional.of(about);
            return this;
        }

        /**
         * Adds seasons.
         *
         * @param names their names, in the order of the year
         * @return this
         */
        public Builder seasons(String... names) {
            seasons.addAll(Arrays.asList(names));
            return this;
        }

        /**
         * Adds lights in which an animal may be looked at.
         *
         * @param words words for them, such as {@code daylight}
         * @return this
         */
        public Builder lights(String... words) {
            lights.addAll(Arrays.asList(words));
            return this;
        }

        /**
         * Adds an unordered trait.
         *
         * @param trait its id
         * @param states its states in display order
         * @return this
         */
        public Builder trait(String trait, String... states) {
            return trait(Trait.of(trait, states));
        }

        /**
         * Adds a trait.
         *
         * @param trait the trait
         * @return this
         * @throws IllegalArgumentException if a trait of this id was added already
         */
        public Builder trait(Trait trait) {
            if (traits.putIfAbsent(trait.id(), trait) != null) {
                throw new IllegalArgumentException("the trait \"" + trait.id() + "\" was added already");
            }
            return this;
        }

        /**
         * Checks and returns the catalogue.
         *
         * @return the catalogue
         * @throws ProblemsException if id or version is blank, a name is not made of plain words or means something else in
         *     conditions, a trait has no state, a state, season or light is stated twice, or a trait names an unknown light
         */
        public Catalogue build() {
            Problems problems = new Problems(Stage.SHAPE);
            if (id.isBlank() || version.isBlank()) {
                problems.add("blank-id", "", "the catalogue has a blank id or version", "an id such as example.traits");
            }
            checkSeasons(problems);
            lights.forEach(light -> PlainWords.check(light, "light", "/lights", problems));
            if (lights.stream().distinct().count() < lights.size()) {
                problems.add("duplicate-light", "/lights", "a light is stated twice");
            }
            traits.forEach((name, trait) -> {
                String pointer = Pointer.of("traits", name);
                PlainWords.check(name, "trait", pointer, problems);
                if (RESERVED.contains(name)) {
                    problems.add(
                            "reserved-name",
                            pointer,
                            "\"" + name + "\" names the " + name + " in conditions",
                            "another name for the trait");
                }
                if (trait.states().isEmpty()) {
                    problems.add(
                            "no-states", pointer, "the trait \"" + name + "\" has no states", "at least one state");
                }
                trait.states().forEach(state -> PlainWords.check(state, "state", pointer + "/states", problems));
                if (trait.states().stream().distinct().count() < trait.states().size()) {
                    problems.add("duplicate-state", pointer + "/states", "a state of \"" + name + "\" is stated twice");
                }
                if (trait.judgeableIn().stream().distinct().count()
                        < trait.judgeableIn().size()) {
                    problems.add(
                            "duplicate-light",
                            pointer + "/judgeableIn",
                            "a light for \"" + name + "\" is stated twice");
                }
            });
            problems.throwIfAny();
            requireLights();
            return new Catalogue(this);
        }

        private void requireLights() {
            Problems problems = new Problems(Stage.REFERENCES);
            traits.forEach((name, trait) -> trait.judgeableIn().stream()
                    .filter(light -> !lights.contains(light))
                    .forEach(light -> problems.unknown(
                            "unknown-light", Pointer.of("traits", name, "judgeableIn"), "light", light, lights)));
            problems.throwIfAny();
        }

        private void checkSeasons(Problems problems) {
            seasons.stream()
                    .filter(season -> !LifeStage.isSeasonName(season))
                    .forEach(season -> problems.add(
                            "bad-season",
                            "/seasons",
                            "\"" + season + "\" cannot name a season",
                            "1 to 80 letters, spaces and hyphens, beginning and ending with a letter"));
            if (seasons.stream().distinct().count() < seasons.size()) {
                problems.add("duplicate-season", "/seasons", "a season is stated twice");
            }
        }
    }
}
