package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.trait.Sex;

/** Draws whole breeding structures, generation after generation. */
final class Kennels {

    private final Drawing drawing;
    private final BreedingPlan plan;
    private final List<FounderDraw> males;
    private final List<FounderDraw> females;
    private final Drawing.Sizes sizes;
    private final Randomness randomness;
    private final long most;

    Kennels(
            Drawing drawing,
            BreedingPlan plan,
            List<FounderDraw> males,
            List<FounderDraw> females,
            Randomness randomness,
            long most) {
        this.drawing = drawing;
        this.plan = plan;
        this.males = males;
        this.females = females;
        this.sizes = drawing.sizes(plan.size());
        this.randomness = randomness;
        this.most = most;
    }

    /** Draws a pedigree; empty if a litter of it is not heard of. */
    Optional<DrawnPedigree> draw() {
        return new Kennel().draw();
    }

    private final class Kennel {

        private final PedigreeBuilder builder = Pedigree.builder("drawn", randomness.toString())
                .catalogue(drawing.genome.model().catalogue().reference());
        private final Map<String, DrawnAnimal> animals = new LinkedHashMap<>();
        private final Map<String, DrawnLitter> litters = new LinkedHashMap<>();
        private List<DrawnAnimal> hobs = new ArrayList<>();
        private List<DrawnAnimal> jills = new ArrayList<>();

        Optional<DrawnPedigree> draw() {
            found(males, plan.males(), Sex.MALE, hobs);
            found(females, plan.females(), Sex.FEMALE, jills);
            for (int generation = 1; generation <= plan.generations(); generation++) {
                List<DrawnAnimal> young = new ArrayList<>();
                for (int number = 1; number <= plan.litters(); number++) {
                    Optional<List<DrawnAnimal>> kits = litter(generation + "." + number);
                    if (kits.isEmpty()) {
                        return Optional.empty();
                    }
                    young.addAll(kits.get());
                }
                hobs = latest(young, Sex.MALE, hobs);
                jills = latest(young, Sex.FEMALE, jills);
            }
            return Optional.of(new DrawnPedigree(builder.build(), animals, litters, 1, randomness));
        }

        private void found(List<FounderDraw> draws, List<Founder> founders, Sex sex, List<DrawnAnimal> group) {
            for (int i = 0; i < draws.size(); i++) {
                String id = "founder " + (animals.size() + 1);
                DrawnAnimal founder = drawing.founder(Optional.of(id), sex, draws.get(i));
                Individual one = Individual.of(id, sex);
                add(founders.get(i).population().map(one::from).orElse(one), founder);
                group.add(founder);
            }
        }

        private void add(Individual bare, DrawnAnimal drawn) {
            builder.add(Drop.recorded(bare, drawn));
            animals.put(bare.id(), drawn);
        }

        private Optional<List<DrawnAnimal>> litter(String number) {
            int size = sizes.next();
            for (long tries = 0; tries < most; tries++) {
                DrawnAnimal sire = hobs.get(drawing.chance.below(hobs.size()));
                DrawnAnimal dam = jills.get(drawing.chance.below(jills.size()));
                Optional<Conception> conceived = Litters.litter(drawing, sire, dam, size, plan.counted());
                if (conceived.isPresent()) {
                    return litter(number, sire, dam, conceived.get());
                }
            }
            throw new TooRareException(
                    "no two animals who can have kits that are "
                            + plan.counted().word() + " came up for litter " + number,
                    most,
                    "count the kits conceived.");
        }

        private Optional<List<DrawnAnimal>> litter(
                String number, DrawnAnimal sire, DrawnAnimal dam, Conception conceived) {
            List<DrawnAnimal> kits = new ArrayList<>();
            for (Conception.Kit kit : conceived.scored()) {
                String id = "kit " + number + "." + (kits.size() + 1);
                DrawnAnimal drawn = drawing.live(Optional.of(id), kit.sex(), kit.strands());
                add(Individual.of(id, kit.sex()), drawn);
                kits.add(drawn);
            }
            Optional<Selection.Known> known =
                    drawing.selection.known(kits, () -> Litters.earlier(drawing, sire, dam), drawing.chance);
            if (known.isEmpty()) {
                return Optional.empty();
            }
            Litter recorded = Litter.of(
                            "litter " + number,
                            dam.id().orElseThrow(),
                            sire.id().orElseThrow(),
                            kits.stream().map(kit -> kit.id().orElseThrow()).toArray(String[]::new))
                    .counting((int) conceived.born(), kits.size())
                    .with(drawing.selection.stated(known.get().probands()));
            builder.add(recorded);
            litters.put(recorded.id(), Litters.litter(drawing, sire, dam, conceived, kits, known.get()));
            return Optional.of(kits);
        }

        private static List<DrawnAnimal> latest(List<DrawnAnimal> young, Sex sex, List<DrawnAnimal> before) {
            List<DrawnAnimal> found =
                    young.stream().filter(one -> one.sex() == sex).toList();
            return found.isEmpty() ? before : found;
        }
    }
}
