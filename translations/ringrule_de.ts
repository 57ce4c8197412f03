<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>AnimalFacts</name>
    <message>
        <source>%1 since %2</source>
        <translation>%1 seit %2</translation>
    </message>
    <message>
        <source>female</source>
        <translation>Weibchen</translation>
    </message>
    <message>
        <source>male</source>
        <translation>Männchen</translation>
    </message>
    <message>
        <source>hatched %1</source>
        <translation>geschlüpft %1</translation>
    </message>
    <message>
        <source>hatched about %1</source>
        <translation>geschlüpft um %1</translation>
    </message>
    <message>
        <source>card %1</source>
        <translation>Karte %1</translation>
    </message>
    <message>
        <source>died %1</source>
        <translation>gestorben %1</translation>
    </message>
    <message>
        <source>left %1</source>
        <translation>abgegeben %1</translation>
    </message>
</context>
<context>
    <name>AnimalsPage</name>
    <message>
        <source>Animals</source>
        <translation>Tiere</translation>
    </message>
    <message>
        <source>Every animal with its newest measures and their 95 % intervals.</source>
        <translation>Jedes Tier mit seinen neuesten Maßen und deren 95-%-Intervallen.</translation>
    </message>
    <message>
        <source>Find code, species or tank</source>
        <translation>Kürzel, Art, Becken</translation>
    </message>
    <message>
        <source>Find an animal</source>
        <translation>Tier suchen</translation>
    </message>
    <message>
        <source>New animal…</source>
        <translation>Neues Tier…</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Verlauf</translation>
    </message>
    <message>
        <source>Save sheet…</source>
        <translation>Blatt speichern…</translation>
    </message>
    <message>
        <source>One page for a curator or veterinarian, as PDF</source>
        <translation>Eine Seite für Kuratorin oder Tierarzt, als PDF</translation>
    </message>
    <message>
        <source>Show growth</source>
        <translation>Wachstum zeigen</translation>
    </message>
    <message>
        <source>Sessions of the animal</source>
        <translation>Fototermine des Tieres</translation>
    </message>
    <message>
        <source>Measures</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Photos at the same scale</source>
        <translation>Fotos im selben Maßstab</translation>
    </message>
    <message>
        <source>Photos of the animal, one a session</source>
        <translation>Fotos des Tieres, eines je Sitzung</translation>
    </message>
    <message>
        <source>Photos of the animal at the same scale</source>
        <translation>Fotos des Tieres im selben Maßstab</translation>
    </message>
    <message>
        <source>Needs a look</source>
        <translation>Anzusehen</translation>
    </message>
    <message>
        <source>Only animals that need a look</source>
        <translation>Nur Tiere, die anzusehen sind</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Becken</translation>
    </message>
    <message>
        <source>Note…</source>
        <translation>Notiz…</translation>
    </message>
    <message>
        <source>A note, food, a diet, a state, a treatment or a measure by hand</source>
        <translation>Notiz, Futter, Futterplan, Zustand, Behandlung oder Maß von Hand</translation>
    </message>
    <message>
        <source>Change…</source>
        <translation>Ändern…</translation>
    </message>
    <message>
        <source>What is known of it, its tank, or which sessions are its own</source>
        <translation>Was bekannt ist, sein Becken oder welche Termine seine sind</translation>
    </message>
    <message>
        <source>Notes, food, events</source>
        <translation>Notizen, Futter, Ereignisse</translation>
    </message>
    <message>
        <source>Notes, food and events of the animal</source>
        <translation>Notizen, Futter und Ereignisse des Tiers</translation>
    </message>
    <message>
        <source>Change entry…</source>
        <translation>Eintrag ändern…</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Undo brings it back</source>
        <translation>Rückgängig bringt ihn zurück</translation>
    </message>
</context>
<context>
    <name>BoxPage</name>
    <message>
        <source>Box</source>
        <translation>Messbox</translation>
    </message>
    <message>
        <source>What the measuring box knows of itself, and whether it still measures true.</source>
        <translation>Was die Messbox von sich weiß und ob sie noch richtig misst.</translation>
    </message>
    <message>
        <source>Measuring box</source>
        <translation>Messbox</translation>
    </message>
    <message>
        <source>New box…</source>
        <translation>Neue Box…</translation>
    </message>
    <message>
        <source>Add a box file…</source>
        <translation>Boxdatei hinzufügen…</translation>
    </message>
    <message>
        <source>No measuring box yet.

Print a scale plate for one, or add the box file that came with a plate.</source>
        <translation>Noch keine Messbox.

Drucken Sie eine Maßplatte dafür, oder fügen Sie die Boxdatei hinzu, die zu einer Platte gehört.</translation>
    </message>
    <message>
        <source>Print a plate for a new box…</source>
        <translation>Platte für eine neue Box drucken…</translation>
    </message>
    <message>
        <source>Steps of setting the box up</source>
        <translation>Schritte zum Einrichten der Box</translation>
    </message>
    <message>
        <source>The step</source>
        <translation>Der Schritt</translation>
    </message>
    <message>
        <source>‹ Back</source>
        <translation>‹ Zurück</translation>
    </message>
    <message>
        <source>Next step ›</source>
        <translation>Nächster Schritt ›</translation>
    </message>
</context>
<context>
    <name>BoxSetup</name>
    <message>
        <source>Cannot tell yet</source>
        <translation>Noch nicht zu sagen</translation>
    </message>
    <message>
        <source>To do</source>
        <translation>Zu tun</translation>
    </message>
    <message>
        <source>Wrong</source>
        <translation>Falsch</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Erledigt</translation>
    </message>
</context>
<context>
    <name>BroodDialog</name>
    <message>
        <source>New brood</source>
        <translation>Neue Brut</translation>
    </message>
    <message>
        <source>&amp;Code</source>
        <translation>&amp;Kürzel</translation>
    </message>
    <message>
        <source>Code of the brood</source>
        <translation>Kürzel der Brut</translation>
    </message>
    <message>
        <source>&amp;Father</source>
        <translation>&amp;Vater</translation>
    </message>
    <message>
        <source>Father, who carries</source>
        <translation>Vater, der trägt</translation>
    </message>
    <message>
        <source>&amp;Mother</source>
        <translation>&amp;Mutter</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Mutter</translation>
    </message>
    <message>
        <source>S&amp;pecies</source>
        <translation>A&amp;rt</translation>
    </message>
    <message>
        <source>Species</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Scientific name</source>
        <translation>Wissenschaftlicher Name</translation>
    </message>
    <message>
        <source>&amp;Tank</source>
        <translation>&amp;Becken</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Becken</translation>
    </message>
</context>
<context>
    <name>BroodEvent</name>
    <message>
        <source>courting</source>
        <translation>Balz</translation>
    </message>
    <message>
        <source>egg transfer</source>
        <translation>Eiübergabe</translation>
    </message>
    <message>
        <source>seen carrying</source>
        <translation>trägt</translation>
    </message>
    <message>
        <source>birth</source>
        <translation>Geburt</translation>
    </message>
    <message>
        <source>counted</source>
        <translation>gezählt</translation>
    </message>
</context>
<context>
    <name>BroodEventDialog</name>
    <message>
        <source>Event of a brood</source>
        <translation>Ereignis einer Brut</translation>
    </message>
    <message>
        <source>&amp;Event</source>
        <translation>&amp;Ereignis</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>&amp;Day</source>
        <translation>&amp;Tag</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>&amp;Young</source>
        <translation>&amp;Junge</translation>
    </message>
    <message>
        <source>Number of young</source>
        <translation>Zahl der Jungen</translation>
    </message>
    <message>
        <source>not counted</source>
        <translation>nicht gezählt</translation>
    </message>
    <message>
        <source>&amp;Note</source>
        <translation>&amp;Notiz</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>May stay empty</source>
        <translation>Darf leer bleiben</translation>
    </message>
</context>
<context>
    <name>BroodsPage</name>
    <message>
        <source>Broods</source>
        <translation>Bruten</translation>
    </message>
    <message>
        <source>Births, when the next is due, and how the young of each brood have grown.</source>
        <translation>Geburten, wann die nächste fällig ist, und wie die Jungen jeder Brut gewachsen sind.</translation>
    </message>
    <message>
        <source>New brood…</source>
        <translation>Neue Brut…</translation>
    </message>
    <message>
        <source>Note an event…</source>
        <translation>Ereignis notieren…</translation>
    </message>
    <message>
        <source>No brood yet.

Note an egg transfer or a birth with New brood…; animals of one species that hatched on one day show here by themselves.</source>
        <translation>Noch keine Brut.

Notieren Sie eine Eiübergabe oder eine Geburt mit „Neue Brut…“; Tiere einer Art, die am selben Tag geschlüpft sind, erscheinen hier von selbst.</translation>
    </message>
    <message>
        <source>Events of the brood</source>
        <translation>Ereignisse der Brut</translation>
    </message>
    <message>
        <source>Mean length of each brood against age</source>
        <translation>Mittlere Länge jeder Brut gegen das Alter</translation>
    </message>
</context>
<context>
    <name>Cautions</name>
    <message>
        <source>Welfare first: stop if the animal darts, gasps, floats or goes pale; never lift it into air; wear wet gloves. &lt;a href=&quot;cautions&quot;&gt;All cautions&lt;/a&gt;</source>
        <translation>Das Tier zuerst: aufhören, wenn es schießt, schnappt, treibt oder blass wird; nie in die Luft heben; nasse Handschuhe tragen. &lt;a href=&quot;cautions&quot;&gt;Alle Hinweise&lt;/a&gt;</translation>
    </message>
    <message>
        <source>Measures, not diagnoses: a thin, listless or refusing animal goes to the veterinarian. &lt;a href=&quot;cautions&quot;&gt;All cautions&lt;/a&gt;</source>
        <translation>Maße, keine Diagnosen: Ein dünnes, mattes oder nicht fressendes Tier gehört zum Tierarzt. &lt;a href=&quot;cautions&quot;&gt;Alle Hinweise&lt;/a&gt;</translation>
    </message>
    <message>
        <source>&lt;h4&gt;The animal&lt;/h4&gt;&lt;p&gt;Stop if it darts, gasps, floats or goes pale. It stays under water the whole time, a minute or two in the box. Lead it with a soft net or a cup and wet gloved hands. Never uncurl a tail by force. Do not handle sick or newborn animals. Photograph brooding males and animals that carry eggs only if it must be; they are never judged on girth. Anaesthesia only as a veterinarian directs.&lt;/p&gt;&lt;h4&gt;You&lt;/h4&gt;&lt;p&gt;Wear gloves and cover cuts: water and fish can carry &lt;i&gt;Mycobacterium marinum&lt;/i&gt; and other infections. Lamps and cameras near salt water: low voltage or a residual-current device.&lt;/p&gt;&lt;h4&gt;What the numbers are&lt;/h4&gt;&lt;p&gt;Ringrule shows measures, not diagnoses. A thin, listless or refusing animal goes to the veterinarian, whatever its numbers say. A flag says what was seen, against whom and by how much, and what else may explain it; an improvement after a change does not prove the cause.&lt;/p&gt;&lt;h4&gt;The law&lt;/h4&gt;&lt;p&gt;Local rules on handling, record keeping and protected species come before anything here. Seahorses are listed in CITES Appendix II.&lt;/p&gt;</source>
        <translation>&lt;h4&gt;Das Tier&lt;/h4&gt;&lt;p&gt;Aufhören, wenn es schießt, schnappt, treibt oder blass wird. Es bleibt die ganze Zeit unter Wasser, ein bis zwei Minuten in der Box. Mit weichem Netz oder Becher und nassen Handschuhen führen. Einen Schwanz nie mit Gewalt aufrollen. Kranke und neugeborene Tiere nicht anfassen. Tragende Männchen und Tiere mit Eiern nur fotografieren, wenn es sein muss; nach dem Umfang werden sie nie beurteilt. Narkose nur nach Anweisung des Tierarztes.&lt;/p&gt;&lt;h4&gt;Sie&lt;/h4&gt;&lt;p&gt;Handschuhe tragen, Wunden abdecken: Wasser und Fische können &lt;i&gt;Mycobacterium marinum&lt;/i&gt; und andere Erreger tragen. Lampen und Kameras nahe Salzwasser: Kleinspannung oder Fehlerstromschutz.&lt;/p&gt;&lt;h4&gt;Was die Zahlen sind&lt;/h4&gt;&lt;p&gt;Ringrule zeigt Maße, keine Diagnosen. Ein dünnes, mattes oder nicht fressendes Tier gehört zum Tierarzt, was auch immer seine Zahlen sagen. Ein Hinweis sagt, was gesehen wurde, gegen wen und wie viel, und was es sonst erklären kann; eine Besserung nach einer Änderung beweist nicht die Ursache.&lt;/p&gt;&lt;h4&gt;Das Recht&lt;/h4&gt;&lt;p&gt;Örtliche Vorschriften zu Haltung, Aufzeichnungen und geschützten Arten gehen allem hier vor. Seepferdchen stehen in Anhang II von CITES.&lt;/p&gt;</translation>
    </message>
</context>
<context>
    <name>CautionsDialog</name>
    <message>
        <source>Cautions</source>
        <translation>Hinweise</translation>
    </message>
</context>
<context>
    <name>CheckPanel</name>
    <message>
        <source>Before each session one photo of the plate alone; once a month, and after anything was moved, one with a dark straight rod of known length where the animals hang.</source>
        <translation>Vor jedem Fototermin ein Foto der Platte allein; einmal im Monat, und wenn etwas verrückt wurde, eines mit einem dunklen geraden Stab bekannter Länge dort, wo die Tiere schwimmen.</translation>
    </message>
    <message>
        <source>Photo of</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>What the photo shows</source>
        <translation>Was das Foto zeigt</translation>
    </message>
    <message>
        <source>Length of the rod</source>
        <translation>Länge des Stabes</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>Checks so far</source>
        <translation>Prüfungen bisher</translation>
    </message>
    <message>
        <source>No check yet.</source>
        <translation>Noch keine Prüfung.</translation>
    </message>
    <message>
        <source>Checks of the box, newest first</source>
        <translation>Prüfungen der Box, neueste zuerst</translation>
    </message>
    <message>
        <source>What the rod read, check by check</source>
        <translation>Ablesung des Stabes bei jeder Prüfung</translation>
    </message>
    <message>
        <source>Check a photo…</source>
        <translation>Foto prüfen…</translation>
    </message>
</context>
<context>
    <name>DecisionPanel</name>
    <message>
        <source>Decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>Decision on this finding</source>
        <translation>Entscheidung zu diesem Befund</translation>
    </message>
    <message>
        <source>Note on the decision</source>
        <translation>Bemerkung zur Entscheidung</translation>
    </message>
    <message>
        <source>Look again on</source>
        <translation>Wieder ansehen am</translation>
    </message>
    <message>
        <source>Day to look again</source>
        <translation>Tag zum Wiederansehen</translation>
    </message>
    <message>
        <source>Keeper</source>
        <translation>Pfleger</translation>
    </message>
    <message>
        <source>Keeper&apos;s initials</source>
        <translation>Kürzel des Pflegers</translation>
    </message>
    <message>
        <source>Take back the last one</source>
        <translation>Letzte zurücknehmen</translation>
    </message>
    <message>
        <source>Keep the decision</source>
        <translation>Entscheidung festhalten</translation>
    </message>
    <message>
        <source>Earlier decisions and what became of them</source>
        <translation>Frühere Entscheidungen und was daraus wurde</translation>
    </message>
</context>
<context>
    <name>DialogButtons</name>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>DietPairWords</name>
    <message>
        <source>Tanks on %1 grew by %2 less than on %3%4.</source>
        <translation>Becken mit %1 wuchsen um %2 weniger als mit %3%4.</translation>
    </message>
    <message>
        <source>Tanks on %1 grew by %2 more than on %3%4.</source>
        <translation>Becken mit %1 wuchsen um %2 mehr als mit %3%4.</translation>
    </message>
    <message>
        <source>Animals on %1 grew by %2 less than on %3%4.</source>
        <translation>Tiere mit %1 wuchsen um %2 weniger als mit %3%4.</translation>
    </message>
    <message>
        <source>Animals on %1 grew by %2 more than on %3%4.</source>
        <translation>Tiere mit %1 wuchsen um %2 mehr als mit %3%4.</translation>
    </message>
    <message>
        <source>That is more than chance explains.</source>
        <translation>Das ist mehr, als der Zufall erklärt.</translation>
    </message>
    <message>
        <source>A difference that matters (%1 or more) is ruled out.</source>
        <translation>Ein Unterschied, der etwas ausmacht (%1 oder mehr), ist ausgeschlossen.</translation>
    </message>
    <message>
        <source>Too few to tell.</source>
        <translation>Zu wenige, um es zu sagen.</translation>
    </message>
    <message>
        <source>One of the two was given in a single tank, which does not show how much tanks differ anyway; give each diet in two or more.</source>
        <translation>Eines der beiden bekam nur ein einziges Becken; wie sehr sich Becken ohnehin unterscheiden, zeigt das nicht. Jedes Futter in zwei oder mehr Becken geben.</translation>
    </message>
    <message>
        <source>One of the two was given to a single animal, which does not show how much animals differ anyway; give each diet in two or more.</source>
        <translation>Eines der beiden bekam nur ein einziges Tier; wie sehr sich Tiere ohnehin unterscheiden, zeigt das nicht. Jedes Futter zwei oder mehr Tieren geben.</translation>
    </message>
    <message>
        <source>With so few tanks even wholly different growth could be chance.</source>
        <translation>Bei so wenigen Becken könnte selbst ganz verschiedenes Wachstum Zufall sein.</translation>
    </message>
    <message>
        <source>With so few animals even wholly different growth could be chance.</source>
        <translation>Bei so wenigen Tieren könnte selbst ganz verschiedenes Wachstum Zufall sein.</translation>
    </message>
    <message>
        <source>%1 % a day</source>
        <translation>%1 % am Tag</translation>
    </message>
    <message>
        <source>%1 mm a day</source>
        <translation>%1 mm am Tag</translation>
    </message>
    <message>
        <source>%1 less</source>
        <translation>%1 weniger</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 mehr</translation>
    </message>
    <message>
        <source> (95 % interval %1 to %2)</source>
        <translation> (95-%-Intervall: %1 bis %2)</translation>
    </message>
    <message>
        <source> (95 % interval %1 to %2; permutation p %3)</source>
        <translation> (95-%-Intervall: %1 bis %2; Permutations-p %3)</translation>
    </message>
    <message>
        <source>To tell a difference of %1 would take about %2 tanks on each diet over the same time.</source>
        <translation>Um einen Unterschied von %1 zu erkennen, wären etwa %2 Becken je Futter über dieselbe Zeit nötig.</translation>
    </message>
    <message>
        <source>To tell a difference of %1 would take about %2 animals on each diet over the same time, or these animals over about %3 months.</source>
        <translation>Um einen Unterschied von %1 zu erkennen, wären etwa %2 Tiere je Futter über dieselbe Zeit nötig, oder diese Tiere über etwa %3 Monate.</translation>
    </message>
    <message>
        <source>To tell a difference of %1 would take about %2 animals on each diet over the same time.</source>
        <translation>Um einen Unterschied von %1 zu erkennen, wären etwa %2 Tiere je Futter über dieselbe Zeit nötig.</translation>
    </message>
    <message>
        <source>To tell a difference of %1 would take these animals over about %3 months.</source>
        <translation>Um einen Unterschied von %1 zu erkennen, wären diese Tiere über etwa %3 Monate nötig.</translation>
    </message>
</context>
<context>
    <name>DietsPage</name>
    <message>
        <source>Diets</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Each animal before and after its food was changed, and diets side by side.</source>
        <translation>Jedes Tier vor und nach einer Umstellung, und Futter im Vergleich.</translation>
    </message>
    <message>
        <source>After a change of food</source>
        <translation>Nach einer Umstellung</translation>
    </message>
    <message>
        <source>Animals before and after a change of food</source>
        <translation>Tiere vor und nach einer Umstellung</translation>
    </message>
    <message>
        <source>Length of the animal among its tankmates</source>
        <translation>Länge des Tieres unter seinen Beckengenossen</translation>
    </message>
    <message>
        <source>Depth ratio of the animal among its tankmates</source>
        <translation>Tiefenverhältnis des Tieres unter seinen Beckengenossen</translation>
    </message>
    <message>
        <source>Diets side by side</source>
        <translation>Futter im Vergleich</translation>
    </message>
    <message>
        <source>Species</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>grown from</source>
        <translation>gewachsen von</translation>
    </message>
    <message>
        <source>First day</source>
        <translation>Erster Tag</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>Last day</source>
        <translation>Letzter Tag</translation>
    </message>
    <message>
        <source>New diet…</source>
        <translation>Neues Futter…</translation>
    </message>
    <message>
        <source>Diet of a tank…</source>
        <translation>Futter eines Beckens…</translation>
    </message>
    <message>
        <source>The diet that a whole tank is on; an animal&apos;s own diet, noted on the page Animals, wins over it</source>
        <translation>Das Futter eines ganzen Beckens; eigenes Futter eines Tiers, auf der Seite Tiere notiert, geht vor</translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message>
        <source>its own past</source>
        <translation>seine eigene Vergangenheit</translation>
    </message>
    <message>
        <source>its tankmates %1</source>
        <translation>seine Beckengenossen %1</translation>
    </message>
    <message>
        <source>%1 is thin for its length: %2 against %3, since %4.</source>
        <translation>%1 ist dünn für seine Länge: %2 gegen %3, seit %4.</translation>
    </message>
    <message>
        <source>%1 is getting thinner for its length: %2 against %3, since %4.</source>
        <translation>%1 wird dünner für seine Länge: %2 gegen %3, seit %4.</translation>
    </message>
    <message>
        <source>%1 lags behind: %2 against %3, since %4.</source>
        <translation>%1 bleibt zurück: %2 gegen %3, seit %4.</translation>
    </message>
    <message>
        <source>%1 did not grow beyond measuring error: %2 against %3, since %4.</source>
        <translation>%1 ist nicht über den Messfehler hinaus gewachsen: %2 gegen %3, seit %4.</translation>
    </message>
    <message>
        <source>%1 measures so differently (%2) that the measure of %4 is doubted and not judged.</source>
        <translation>%1 misst so anders (%2), dass das Maß vom %4 angezweifelt und nicht beurteilt wird.</translation>
    </message>
    <message>
        <source>Nothing can be told of %1 from the session of %4.</source>
        <translation>Von %1 lässt sich aus der Sitzung vom %4 nichts sagen.</translation>
    </message>
    <message>
        <source>cannot tell</source>
        <translation>nicht zu sagen</translation>
    </message>
    <message>
        <source>%1 refuses its food, since %4.</source>
        <translation>%1 verweigert sein Futter, seit %4.</translation>
    </message>
    <message>
        <source>The whole of %1 is below its own past: %2, since %4.</source>
        <translation>%1 liegt als Ganzes unter seiner eigenen Vergangenheit: %2, seit %4.</translation>
    </message>
    <message>
        <source>better</source>
        <translation>besser</translation>
    </message>
    <message>
        <source>worse</source>
        <translation>schlechter</translation>
    </message>
    <message>
        <source>no better beyond error</source>
        <translation>nicht besser über den Fehler hinaus</translation>
    </message>
    <message>
        <source>too early to tell</source>
        <translation>noch zu früh zu sagen</translation>
    </message>
    <message>
        <source>%1 (%2 before, %3 after)</source>
        <translation>%1 (%2 vorher, %3 nachher)</translation>
    </message>
    <message>
        <source>This does not prove the cause: an animal chosen because it was low tends to be less low next time.</source>
        <translation>Das beweist die Ursache nicht: Ein Tier, das gewählt wurde, weil es zurücklag, liegt beim nächsten Mal eher weniger zurück.</translation>
    </message>
    <message>
        <source>%1, food changed on %2: growth %3; condition against its tankmates %4. %5</source>
        <translation>%1, Futter umgestellt am %2: Wachstum %3; Kondition gegen seine Beckengenossen %4. %5</translation>
    </message>
    <message>
        <source>The whole of %1 grows slower than is published: %2, since %4.</source>
        <translation>%1 wächst als Ganzes langsamer als veröffentlicht: %2, seit %4.</translation>
    </message>
    <message>
        <source>%1 measures so differently (%2) that the measure of %4 is doubted and not judged. Likely a wrong card: it fits %5.</source>
        <translation>%1 misst so anders (%2), dass das Maß vom %4 angezweifelt und nicht beurteilt wird. Wahrscheinlich eine falsche Karte: Es passt zu %5.</translation>
    </message>
    <message>
        <source>tank %1</source>
        <translation>Becken %1</translation>
    </message>
    <message>
        <source>published growth</source>
        <comment>compared with</comment>
        <translation>dem veröffentlichten Wachstum</translation>
    </message>
    <message>
        <source>its own past</source>
        <comment>compared with</comment>
        <translation>seiner eigenen Vergangenheit</translation>
    </message>
    <message>
        <source>measure doubtful, likely a wrong card (%1?)</source>
        <translation>Maß zweifelhaft, wohl falsche Karte (%1?)</translation>
    </message>
    <message>
        <source>likely a wrong card (%1?)</source>
        <translation>wohl falsche Karte (%1?)</translation>
    </message>
</context>
<context>
    <name>FindingsPage</name>
    <message>
        <source>Needs a look</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>As told after</source>
        <translation>Stand nach</translation>
    </message>
    <message>
        <source>Session date</source>
        <translation>Fototermin</translation>
    </message>
    <message>
        <source>Findings, most urgent first</source>
        <translation>Befunde, dringendste zuerst</translation>
    </message>
    <message>
        <source>The finding with its evidence</source>
        <translation>Der Befund mit seinem Beleg</translation>
    </message>
    <message>
        <source>Show in Growth</source>
        <translation>Im Wachstum zeigen</translation>
    </message>
    <message>
        <source>Show its photos</source>
        <translation>Fotos zeigen</translation>
    </message>
    <message>
        <source>Compared with</source>
        <translation>Verglichen mit</translation>
    </message>
    <message>
        <source>Since</source>
        <translation>Seit</translation>
    </message>
    <message>
        <source>What to do next</source>
        <translation>Was als Nächstes zu tun ist</translation>
    </message>
    <message>
        <source>What else could explain it</source>
        <translation>Was es sonst erklären könnte</translation>
    </message>
    <message>
        <source>The animal against its tankmates</source>
        <translation>Das Tier gegen seine Beckengenossen</translation>
    </message>
    <message>
        <source>Then and now, at the same scale</source>
        <translation>Damals und jetzt, im selben Maßstab</translation>
    </message>
    <message>
        <source>The animal then and now</source>
        <translation>Das Tier damals und jetzt</translation>
    </message>
</context>
<context>
    <name>FirstSteps</name>
    <message>
        <source>No session yet</source>
        <translation>Noch kein Termin</translation>
    </message>
    <message>
        <source>Three steps to the first measures. A folder of photos or a camera card can also be dropped anywhere on this window.</source>
        <translation>Drei Schritte zu den ersten Maßen. Ein Ordner mit Fotos oder eine Kamerakarte kann auch irgendwo auf dieses Fenster gezogen werden.</translation>
    </message>
    <message>
        <source>Set up the box</source>
        <translation>Die Messbox einrichten</translation>
    </message>
    <message>
        <source>Plate, lens and water: how pixels become millimetres.</source>
        <translation>Platte, Objektiv und Wasser: wie aus Pixeln Millimeter werden.</translation>
    </message>
    <message>
        <source>Add the animals</source>
        <translation>Die Tiere eintragen</translation>
    </message>
    <message>
        <source>Each with its tank and the number on its card. They can also be told later.</source>
        <translation>Jedes mit Becken und Nummer auf seiner Karte. Auch später möglich.</translation>
    </message>
    <message>
        <source>Measure a folder of photos</source>
        <translation>Einen Ordner mit Fotos messen</translation>
    </message>
    <message>
        <source>From the camera card or a copy of it. The originals stay as they are.</source>
        <translation>Von der Kamerakarte oder einer Kopie. Die Originale bleiben, wie sie sind.</translation>
    </message>
</context>
<context>
    <name>GrowthCurve</name>
    <message>
        <source>A curve is fitted to %1 animals at most: choose a tank.</source>
        <translation>Eine Kurve wird für höchstens %1 Tiere berechnet: ein Becken wählen.</translation>
    </message>
</context>
<context>
    <name>GrowthPage</name>
    <message>
        <source>Growth</source>
        <translation>Wachstum</translation>
    </message>
    <message>
        <source>Each animal against its tankmates.</source>
        <translation>Jedes Tier gegen seine Beckengenossen.</translation>
    </message>
    <message>
        <source>Print…</source>
        <translation>Drucken…</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Maß</translation>
    </message>
    <message>
        <source>Against</source>
        <translation>Gegen</translation>
    </message>
    <message>
        <source>Time axis</source>
        <translation>Zeitachse</translation>
    </message>
    <message>
        <source>Tankmates&apos; band</source>
        <translation>Band der Beckengenossen</translation>
    </message>
    <message>
        <source>Median of the animals not picked out and one robust standard deviation to either side; five animals or more</source>
        <translation>Median der nicht hervorgehobenen Tiere und eine robuste Standardabweichung nach beiden Seiten; ab fünf Tieren</translation>
    </message>
    <message>
        <source>Animals</source>
        <translation>Tiere</translation>
    </message>
    <message>
        <source>Animals to show and to pick out</source>
        <translation>Tiere zum Zeigen und Hervorheben</translation>
    </message>
    <message>
        <source>Tick to show, select to pick out. Esc picks out none.</source>
        <translation>Haken zeigt, Auswahl hebt hervor. Esc hebt keines hervor.</translation>
    </message>
    <message>
        <source>Growth chart</source>
        <translation>Wachstumsdiagramm</translation>
    </message>
    <message>
        <source>Save…</source>
        <translation>Speichern…</translation>
    </message>
    <message>
        <source>Logarithmic scale</source>
        <translation>Logarithmische Skala</translation>
    </message>
    <message>
        <source>Growth by a constant share is a straight line then</source>
        <translation>Wachstum um einen festen Anteil ist dann eine Gerade</translation>
    </message>
    <message>
        <source>Which animals: a tank, a brood, a species</source>
        <translation>Welche Tiere: ein Becken, eine Brut, eine Art</translation>
    </message>
    <message>
        <source>Fitted curve</source>
        <translation>Kurve der Gruppe</translation>
    </message>
    <message>
        <source>Length against age of the animals that are shown, with the band in which 95 % of animals like these lie</source>
        <translation>Länge gegen Alter der gezeigten Tiere, mit dem Band, in dem 95 % solcher Tiere liegen</translation>
    </message>
    <message>
        <source>Diets and events</source>
        <translation>Futter und Ereignisse</translation>
    </message>
    <message>
        <source>Diets shaded, moves, states and treatments marked: of one animal, when it alone is picked out</source>
        <translation>Futter grau, Umzüge, Zustände und Behandlungen markiert: von einem Tier, wenn nur dieses hervorgehoben ist</translation>
    </message>
    <message>
        <source>Group</source>
        <translation>Gruppe</translation>
    </message>
</context>
<context>
    <name>GrowthStory</name>
    <message>
        <source>to %1</source>
        <translation>nach %1</translation>
    </message>
</context>
<context>
    <name>ImportDialog</name>
    <message>
        <source>Import a table</source>
        <translation>Tabelle einlesen</translation>
    </message>
    <message>
        <source>A CSV table, as spreadsheets save it. Columns are matched by their names; nothing is kept before you see what becomes of them.</source>
        <translation>Eine CSV-Tabelle, wie Tabellenprogramme sie speichern. Spalten werden nach Namen zugeordnet; nichts wird übernommen, bevor zu sehen ist, was daraus wird.</translation>
    </message>
    <message>
        <source>&amp;Table</source>
        <translation>&amp;Tabelle</translation>
    </message>
    <message>
        <source>File of the table</source>
        <translation>Datei der Tabelle</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>Choose the file of the table</source>
        <translation>Datei der Tabelle wählen</translation>
    </message>
    <message>
        <source>&amp;What it lists</source>
        <translation>&amp;Was sie auflistet</translation>
    </message>
    <message>
        <source>What the table lists</source>
        <translation>Was die Tabelle auflistet</translation>
    </message>
    <message>
        <source>&amp;Days are written</source>
        <translation>Ta&amp;ge schreiben als</translation>
    </message>
    <message>
        <source>How the table writes days</source>
        <translation>Wie die Tabelle Tage schreibt</translation>
    </message>
    <message>
        <source>What becomes of the table</source>
        <translation>Was aus der Tabelle wird</translation>
    </message>
    <message>
        <source>Choose a table whose first line names its columns.</source>
        <translation>Eine Tabelle wählen, deren erste Zeile die Spalten nennt.</translation>
    </message>
</context>
<context>
    <name>LensPanel</name>
    <message>
        <source>Ten photos or more, in air, with the focus and zoom of the sessions. Tilt the board by 20 to 40 degrees, another way in each photo, and bring it into every corner of the frame.</source>
        <translation>Zehn Fotos oder mehr, in Luft, mit Schärfe und Zoom der Fototermine. Die Tafel um 20 bis 40 Grad neigen, in jedem Foto anders, und in jede Ecke des Bildes bringen.</translation>
    </message>
    <message>
        <source>Photos of</source>
        <translation>Fotos von</translation>
    </message>
    <message>
        <source>Board in the photos</source>
        <translation>Tafel auf den Fotos</translation>
    </message>
    <message>
        <source>Inner corners along a row of the chessboard</source>
        <translation>Innere Ecken in einer Reihe des Schachbretts</translation>
    </message>
    <message>
        <source>×</source>
        <translation>×</translation>
    </message>
    <message>
        <source>Inner corners down a column of the chessboard</source>
        <translation>Innere Ecken in einer Spalte des Schachbretts</translation>
    </message>
    <message>
        <source>Side of one square</source>
        <translation>Seite eines Feldes</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>Lens photos, one by one</source>
        <translation>Objektivfotos, einzeln</translation>
    </message>
    <message>
        <source>Where in the frame corners were seen</source>
        <translation>Wo im Bild Ecken gesehen wurden</translation>
    </message>
    <message>
        <source>Use this lens</source>
        <translation>Dieses Objektiv übernehmen</translation>
    </message>
    <message>
        <source>Calibrate by photos…</source>
        <translation>Mit Fotos kalibrieren…</translation>
    </message>
</context>
<context>
    <name>MainWindow</name>
    <message>
        <source>Ringrule</source>
        <translation>Ringrule</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
</context>
<context>
    <name>NewAnimalDialog</name>
    <message>
        <source>New animal</source>
        <translation>Neues Tier</translation>
    </message>
    <message>
        <source>Its card, laid into the photo, tells the photos of this animal from all others.</source>
        <translation>Seine Karte im Bild unterscheidet die Fotos dieses Tieres von allen anderen.</translation>
    </message>
    <message>
        <source>&amp;Code</source>
        <translation>&amp;Kürzel</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>May stay empty</source>
        <translation>Darf leer bleiben</translation>
    </message>
    <message>
        <source>S&amp;pecies</source>
        <translation>A&amp;rt</translation>
    </message>
    <message>
        <source>Species</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Scientific name</source>
        <translation>Wissenschaftlicher Name</translation>
    </message>
    <message>
        <source>S&amp;hape</source>
        <translation>&amp;Gestalt</translation>
    </message>
    <message>
        <source>Shape</source>
        <translation>Gestalt</translation>
    </message>
    <message>
        <source>Se&amp;x</source>
        <translation>Ges&amp;chlecht</translation>
    </message>
    <message>
        <source>Sex</source>
        <translation>Geschlecht</translation>
    </message>
    <message>
        <source>C&amp;ard</source>
        <translation>K&amp;arte</translation>
    </message>
    <message>
        <source>Card</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>no card</source>
        <translation>keine Karte</translation>
    </message>
    <message>
        <source>&amp;Hatched</source>
        <translation>Gesch&amp;lüpft</translation>
    </message>
    <message>
        <source>How well the hatch date is known</source>
        <translation>Wie genau der Schlupftag bekannt ist</translation>
    </message>
    <message>
        <source>Hatch date</source>
        <translation>Schlupftag</translation>
    </message>
    <message>
        <source>&amp;Tank</source>
        <translation>&amp;Becken</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Becken</translation>
    </message>
    <message>
        <source>since</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>In this tank since</source>
        <translation>In diesem Becken seit</translation>
    </message>
</context>
<context>
    <name>NewBoxDialog</name>
    <message>
        <source>New measuring box</source>
        <translation>Neue Messbox</translation>
    </message>
    <message>
        <source>Ringrule draws a scale plate for it. Choose the plate so that the animal lies over its free middle, with room to spare.</source>
        <translation>Ringrule zeichnet eine Maßplatte dafür. Wählen Sie sie so, dass das Tier mit Platz ringsum vor der freien Mitte liegt.</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>Name of the box</source>
        <translation>Name der Box</translation>
    </message>
    <message>
        <source>What keepers call it</source>
        <translation>Wie die Pfleger sie nennen</translation>
    </message>
    <message>
        <source>&amp;Plate</source>
        <translation>&amp;Platte</translation>
    </message>
    <message>
        <source>Size of the plate</source>
        <translation>Größe der Platte</translation>
    </message>
    <message>
        <source>&amp;Ground</source>
        <translation>&amp;Grund</translation>
    </message>
    <message>
        <source>Ground of the plate</source>
        <translation>Grund der Platte</translation>
    </message>
    <message>
        <source>P&amp;aper</source>
        <translation>P&amp;apier</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
</context>
<context>
    <name>NewSessionDialog</name>
    <message>
        <source>New photo session</source>
        <translation>Neuer Fototermin</translation>
    </message>
    <message>
        <source>Photos in sub-folders named above, front or mirror are read as that view; all others as side views.</source>
        <translation>Fotos in Unterordnern namens above, front oder mirror gelten als diese Ansicht, alle anderen als Seitenansicht.</translation>
    </message>
    <message>
        <source>&amp;Photo folder</source>
        <translation>&amp;Fotoordner</translation>
    </message>
    <message>
        <source>Photo folder</source>
        <translation>Fotoordner</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>&amp;Date</source>
        <translation>&amp;Datum</translation>
    </message>
    <message>
        <source>Date of the session</source>
        <translation>Datum des Fototermins</translation>
    </message>
    <message>
        <source>&amp;Keeper</source>
        <translation>&amp;Pfleger</translation>
    </message>
    <message>
        <source>Initials</source>
        <translation>Initialen</translation>
    </message>
    <message>
        <source>Keeper&apos;s initials</source>
        <translation>Initialen des Pflegers</translation>
    </message>
    <message>
        <source>&amp;Box</source>
        <translation>&amp;Box</translation>
    </message>
    <message>
        <source>Measuring box</source>
        <translation>Messbox</translation>
    </message>
    <message>
        <source>Add a box file…</source>
        <translation>Boxdatei hinzufügen…</translation>
    </message>
</context>
<context>
    <name>PhotoState</name>
    <message>
        <source>Nothing measured</source>
        <translation>Nichts gemessen</translation>
    </message>
    <message>
        <source>Cannot tell</source>
        <translation>Nicht zu sagen</translation>
    </message>
    <message>
        <source>Corrected by hand</source>
        <translation>Von Hand berichtigt</translation>
    </message>
    <message>
        <source>Accepted</source>
        <translation>Angenommen</translation>
    </message>
    <message>
        <source>To be looked at</source>
        <translation>Anzusehen</translation>
    </message>
</context>
<context>
    <name>PlanePanel</name>
    <message>
        <source>From the face of the plate to the middle of the animal’s body, toward the camera, and how far to either side it may be. A clear pane or a net before the plate keeps the animal in a narrow space: with 15 mm of room, an animal 6 mm thick has its middle at 7.5 ± 4.5 mm.</source>
        <translation>Von der Fläche der Platte bis zur Mitte des Tierkörpers, zur Kamera hin, und wie weit es nach beiden Seiten davon sein kann. Eine klare Scheibe oder ein Netz vor der Platte hält das Tier in einem schmalen Raum: Bei 15 mm Platz liegt die Mitte eines 6 mm dicken Tieres bei 7,5 ± 4,5 mm.</translation>
    </message>
    <message>
        <source>Before the &amp;plate</source>
        <translation>Vor der &amp;Platte</translation>
    </message>
    <message>
        <source>Distance of the animal’s middle from the plate</source>
        <translation>Abstand der Tiermitte von der Platte</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>To either &amp;side</source>
        <translation>Nach beiden &amp;Seiten</translation>
    </message>
    <message>
        <source>How far the animal may be from there</source>
        <translation>Wie weit das Tier davon sein kann</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>Diesen Ort behalten</translation>
    </message>
</context>
<context>
    <name>PrintPanel</name>
    <message>
        <source>Scale plate</source>
        <translation>Maßplatte</translation>
    </message>
    <message>
        <source>Its PDF was saved when the box was made; the last page tells how to laminate and mount it. For a plate that is worn or lost make a new box: a new print must be checked anew.</source>
        <translation>Ihr PDF wurde beim Anlegen der Box gespeichert; die letzte Seite sagt, wie sie laminiert und befestigt wird. Für eine abgenutzte oder verlorene Platte eine neue Box anlegen: Ein neuer Druck muss neu geprüft werden.</translation>
    </message>
    <message>
        <source>Animal cards</source>
        <translation>Tierkarten</translation>
    </message>
    <message>
        <source>A card laid into the photo tells which animal it is. Its number is entered with the animal.</source>
        <translation>Eine Karte im Bild sagt, welches Tier es ist. Ihre Nummer wird beim Tier eingetragen.</translation>
    </message>
    <message>
        <source>&amp;Numbers</source>
        <translation>&amp;Nummern</translation>
    </message>
    <message>
        <source>Card numbers</source>
        <translation>Kartennummern</translation>
    </message>
    <message>
        <source>1-12,15</source>
        <translation>1-12,15</translation>
    </message>
    <message>
        <source>&amp;Marker</source>
        <translation>&amp;Marker</translation>
    </message>
    <message>
        <source>Side of the marker</source>
        <translation>Seite des Markers</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>P&amp;aper</source>
        <translation>P&amp;apier</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Save the cards as PDF…</source>
        <translation>Karten als PDF speichern…</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>No rod was read yet.</source>
        <translation>Noch kein Stab abgelesen.</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>Rod read long or short (%)</source>
        <translation>Stab zu lang oder zu kurz abgelesen (%)</translation>
    </message>
    <message>
        <source>Bars: 95 % interval. Hollow: the box did not hold.</source>
        <translation>Balken: 95-%-Intervall. Hohl: Die Box bestand nicht.</translation>
    </message>
    <message>
        <source>No brood with a known birth has been measured yet.</source>
        <translation>Noch keine Brut mit bekannter Geburt gemessen.</translation>
    </message>
    <message>
        <source>Age (days)</source>
        <translation>Alter (Tage)</translation>
    </message>
    <message>
        <source>Mean standard length (mm)</source>
        <translation>Mittlere Standardlänge (mm)</translation>
    </message>
    <message>
        <source>Bars: 1.96 standard deviations between the animals of a brood.</source>
        <translation>Balken: 1,96 Standardabweichungen zwischen den Tieren einer Brut.</translation>
    </message>
    <message>
        <source>too early to tell</source>
        <translation>noch zu früh</translation>
    </message>
    <message>
        <source>▲ better</source>
        <translation>▲ besser</translation>
    </message>
    <message>
        <source>no real change</source>
        <translation>keine echte Änderung</translation>
    </message>
    <message>
        <source>▼ worse</source>
        <translation>▼ schlechter</translation>
    </message>
    <message>
        <source>food changed</source>
        <translation>Futter umgestellt</translation>
    </message>
    <message>
        <source>The collection has no box file of this name: add it on the page Box, then the photo can be corrected.</source>
        <translation>Die Sammlung hat keine Boxdatei dieses Namens: Fügen Sie sie auf der Seite Messbox hinzu, dann kann das Foto berichtigt werden.</translation>
    </message>
</context>
<context>
    <name>RulePanel</name>
    <message>
        <source>States</source>
        <translation>Soll</translation>
    </message>
    <message>
        <source>Reads</source>
        <translation>Ist</translation>
    </message>
    <message>
        <source>Bar &amp;across</source>
        <translation>Balken &amp;quer</translation>
    </message>
    <message>
        <source>Length that the bar across states</source>
        <translation>Angegebene Länge des Balkens quer</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>Length of the bar across by the rule</source>
        <translation>Gemessene Länge des Balkens quer</translation>
    </message>
    <message>
        <source>–</source>
        <translation>–</translation>
    </message>
    <message>
        <source>Bar &amp;down</source>
        <translation>Balken &amp;hoch</translation>
    </message>
    <message>
        <source>Length that the bar down states</source>
        <translation>Angegebene Länge des Balkens hoch</translation>
    </message>
    <message>
        <source>Length of the bar down by the rule</source>
        <translation>Gemessene Länge des Balkens hoch</translation>
    </message>
    <message>
        <source>Correct the plate</source>
        <translation>Platte berichtigen</translation>
    </message>
    <message>
        <source>The two black bars on the print, from end to end, to a tenth of a millimetre. Later the scales on the plate itself, between the numbers that its last page names.</source>
        <translation>Die beiden schwarzen Balken auf dem Druck, von Ende zu Ende, auf ein zehntel Millimeter. Später die Skalen auf der Platte selbst, zwischen den Zahlen, die ihre letzte Seite nennt.</translation>
    </message>
</context>
<context>
    <name>SessionPage</name>
    <message>
        <source>Photo session</source>
        <translation>Fototermin</translation>
    </message>
    <message>
        <source>Check each photo, correct what is off, accept.</source>
        <translation>Jedes Foto ansehen, berichtigen, was nicht stimmt, annehmen.</translation>
    </message>
    <message>
        <source>Session</source>
        <translation>Fototermin</translation>
    </message>
    <message>
        <source>New session…</source>
        <translation>Neuer Termin…</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Photos of the session</source>
        <translation>Fotos des Termins</translation>
    </message>
    <message>
        <source>Marks</source>
        <translation>Marken</translation>
    </message>
    <message>
        <source>Move landmarks (Ctrl+M)</source>
        <translation>Messpunkte verschieben (Strg+M)</translation>
    </message>
    <message>
        <source>Move landmarks</source>
        <translation>Messpunkte verschieben</translation>
    </message>
    <message>
        <source>Trace</source>
        <translation>Nachziehen</translation>
    </message>
    <message>
        <source>Click along the edge; the line follows it (Ctrl+T)</source>
        <translation>Am Rand entlang klicken; die Linie folgt ihm (Strg+T)</translation>
    </message>
    <message>
        <source>Trace along the edge</source>
        <translation>Am Rand nachziehen</translation>
    </message>
    <message>
        <source>Pull</source>
        <translation>Ziehen</translation>
    </message>
    <message>
        <source>Pull the outline to where it belongs (Ctrl+L)</source>
        <translation>Umriss dorthin ziehen, wo er hingehört (Strg+L)</translation>
    </message>
    <message>
        <source>Pull the outline</source>
        <translation>Umriss ziehen</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Trennen</translation>
    </message>
    <message>
        <source>Cut two animals apart with a line (Ctrl+K)</source>
        <translation>Zwei Tiere mit einer Linie trennen (Strg+K)</translation>
    </message>
    <message>
        <source>Cut two animals apart</source>
        <translation>Zwei Tiere trennen</translation>
    </message>
    <message>
        <source>−</source>
        <translation>−</translation>
    </message>
    <message>
        <source>Zoom out (−)</source>
        <translation>Verkleinern (−)</translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation>Verkleinern</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Tier</translation>
    </message>
    <message>
        <source>Fit the animal (0)</source>
        <translation>Tier einpassen (0)</translation>
    </message>
    <message>
        <source>Fit the animal</source>
        <translation>Tier einpassen</translation>
    </message>
    <message>
        <source>+</source>
        <translation>+</translation>
    </message>
    <message>
        <source>Zoom in (+)</source>
        <translation>Vergrößern (+)</translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation>Vergrößern</translation>
    </message>
    <message>
        <source>Photo with outline and landmarks</source>
        <translation>Foto mit Umriss und Messpunkten</translation>
    </message>
    <message>
        <source>In the photo</source>
        <translation>Im Foto</translation>
    </message>
    <message>
        <source>Animal in the photo</source>
        <translation>Tier im Foto</translation>
    </message>
    <message>
        <source>Animal</source>
        <translation>Tier</translation>
    </message>
    <message>
        <source>Which animal it is</source>
        <translation>Welches Tier es ist</translation>
    </message>
    <message>
        <source>Tail closed</source>
        <translation>Schwanz geschlossen</translation>
    </message>
    <message>
        <source>The tail closes on itself: no length is taken along it</source>
        <translation>Der Schwanz schließt sich: An ihm entlang wird keine Länge genommen</translation>
    </message>
    <message>
        <source>Brooding</source>
        <translation>Trägt</translation>
    </message>
    <message>
        <source>Carries eggs or young: not judged on girth that day</source>
        <translation>Trägt Eier oder Junge: an diesem Tag nicht nach dem Umfang beurteilt</translation>
    </message>
    <message>
        <source>Measures with their 95 % intervals</source>
        <translation>Maße mit ihren 95-%-Intervallen</translation>
    </message>
    <message>
        <source>Remarks</source>
        <translation>Bemerkungen</translation>
    </message>
    <message>
        <source>Remarks on this measure</source>
        <translation>Bemerkungen zu dieser Messung</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Accept</source>
        <translation>Annehmen</translation>
    </message>
    <message>
        <source>‹ Previous</source>
        <translation>‹ Voriges</translation>
    </message>
    <message>
        <source>Take again</source>
        <translation>Neu aufnehmen</translation>
    </message>
    <message>
        <source>Notes with the animal that it is to be photographed again, and goes on (Ctrl+R)</source>
        <translation>Notiert beim Tier, dass es neu zu fotografieren ist, und geht weiter (Strg+R)</translation>
    </message>
    <message>
        <source>Skip ›</source>
        <translation>Auslassen ›</translation>
    </message>
    <message>
        <source>The next photo; this one stays as it is (Ctrl+Down)</source>
        <translation>Das nächste Foto; dieses bleibt, wie es ist (Strg+Ab)</translation>
    </message>
    <message>
        <source>Next photo</source>
        <translation>Nächstes Foto</translation>
    </message>
    <message>
        <source>Undo what was changed last</source>
        <translation>Die letzte Änderung rückgängig machen</translation>
    </message>
    <message>
        <source>Redo what was taken back</source>
        <translation>Zurückgenommenes wiederholen</translation>
    </message>
</context>
<context>
    <name>SettingsDialog</name>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Keeper&apos;s &amp;initials</source>
        <translation>&amp;Kürzel des Pflegers</translation>
    </message>
    <message>
        <source>Keeper&apos;s initials</source>
        <translation>Kürzel des Pflegers</translation>
    </message>
    <message>
        <source>&amp;Days are written</source>
        <translation>Ta&amp;ge schreiben als</translation>
    </message>
    <message>
        <source>How days are written</source>
        <translation>Wie Tage geschrieben werden</translation>
    </message>
    <message>
        <source>C&amp;olours</source>
        <translation>&amp;Farben</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>&amp;Text size</source>
        <translation>&amp;Textgröße</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Textgröße</translation>
    </message>
    <message>
        <source>&amp;Language, from the next start</source>
        <translation>&amp;Sprache, ab dem nächsten Start</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>When an animal needs a look</source>
        <translation>Wann ein Tier anzusehen ist</translation>
    </message>
    <message>
        <source>For this collection. Lower numbers tell sooner, and raise more false alarms. A species may have thresholds of its own in the collection&apos;s species file; those stand.</source>
        <translation>Für diese Sammlung. Kleinere Zahlen melden früher und öfter falsch. Eine Art kann in der Artendatei der Sammlung eigene Schwellen haben; die bleiben.</translation>
    </message>
</context>
<context>
    <name>WaterPanel</name>
    <message>
        <source>&amp;Window</source>
        <translation>&amp;Scheibe</translation>
    </message>
    <message>
        <source>What the window is made of</source>
        <translation>Woraus die Scheibe ist</translation>
    </message>
    <message>
        <source>Refractive index of the window</source>
        <translation>Brechzahl der Scheibe</translation>
    </message>
    <message>
        <source>Window &amp;thickness</source>
        <translation>Sch&amp;eibendicke</translation>
    </message>
    <message>
        <source>Window thickness</source>
        <translation>Scheibendicke</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>&amp;Camera to window</source>
        <translation>&amp;Kamera bis Scheibe</translation>
    </message>
    <message>
        <source>Camera to window</source>
        <translation>Kamera bis Scheibe</translation>
    </message>
    <message>
        <source>–</source>
        <translation>–</translation>
    </message>
    <message>
        <source>W&amp;ater, window to plate</source>
        <translation>&amp;Wasser, Scheibe bis Platte</translation>
    </message>
    <message>
        <source>Water from window to plate</source>
        <translation>Wasser von Scheibe bis Platte</translation>
    </message>
    <message>
        <source>&amp;Salinity</source>
        <translation>Sa&amp;lzgehalt</translation>
    </message>
    <message>
        <source>Salinity</source>
        <translation>Salzgehalt</translation>
    </message>
    <message>
        <source> ppt</source>
        <translation> ‰</translation>
    </message>
    <message>
        <source>T&amp;emperature</source>
        <translation>&amp;Temperatur</translation>
    </message>
    <message>
        <source>Temperature of the water</source>
        <translation>Wassertemperatur</translation>
    </message>
    <message>
        <source> °C</source>
        <translation> °C</translation>
    </message>
    <message>
        <source>Keep these distances</source>
        <translation>Diese Abstände behalten</translation>
    </message>
    <message>
        <source>Measure with the steel rule, square to the window. Camera to window: from the lens’s opening as it seems from the front, to within 2 %.</source>
        <translation>Mit dem Stahlmaßstab senkrecht zur Scheibe messen. Kamera bis Scheibe: von der Objektivöffnung, wie sie von vorn erscheint, auf 2 % genau.</translation>
    </message>
</context>
<context>
    <name>WelcomePage</name>
    <message>
        <source>Ringrule</source>
        <translation>Ringrule</translation>
    </message>
    <message>
        <source>Measures seahorses and pipefish from photographs, keeps their growth, and says which of them needs a look.</source>
        <translation>Misst Seepferdchen und Seenadeln auf Fotos, hält ihr Wachstum fest und sagt, welches Tier man ansehen sollte.</translation>
    </message>
    <message>
        <source>&amp;Open a collection</source>
        <translation>Sammlung ö&amp;ffnen</translation>
    </message>
    <message>
        <source>The folder that holds collection.sqlite, the photos and the box.</source>
        <translation>Der Ordner mit collection.sqlite, den Fotos und der Box.</translation>
    </message>
    <message>
        <source>&amp;Start a new collection</source>
        <translation>&amp;Neue Sammlung beginnen</translation>
    </message>
    <message>
        <source>Choose an empty folder, then add a session from a folder of photos and a box file.</source>
        <translation>Einen leeren Ordner wählen, dann einen Fototermin aus einem Fotoordner und einer Boxdatei hinzufügen.</translation>
    </message>
    <message>
        <source>&amp;Try the demo collection</source>
        <translation>&amp;Beispielsammlung ausprobieren</translation>
    </message>
    <message>
        <source>An invented fish house with nine months of photos. Nothing of yours is touched.</source>
        <translation>Ein erfundenes Fischhaus mit Fotos aus neun Monaten. Nichts von Ihnen wird angerührt.</translation>
    </message>
    <message>
        <source>Opened before</source>
        <translation>Zuletzt geöffnet</translation>
    </message>
    <message>
        <source>Collections opened before</source>
        <translation>Zuletzt geöffnete Sammlungen</translation>
    </message>
</context>
<context>
    <name>main</name>
    <message>
        <source>Measures seahorses and pipefish from photographs.</source>
        <translation>Misst Seepferdchen und Seenadeln auf Fotos.</translation>
    </message>
    <message>
        <source>Folder of the collection to open.</source>
        <translation>Ordner der Sammlung, die geöffnet werden soll.</translation>
    </message>
    <message>
        <source>Save a picture of every page into this folder and quit.</source>
        <translation>Ein Bild jeder Seite in diesen Ordner speichern und beenden.</translation>
    </message>
    <message>
        <source>Colours of this run: system, light or dark.</source>
        <translation>Farben für diesmal: system, light oder dark.</translation>
    </message>
    <message>
        <source>Text size of this run in percent: 100, 115, 130 or 150.</source>
        <translation>Schriftgröße für diesmal in Prozent: 100, 115, 130 oder 150.</translation>
    </message>
    <message>
        <source>Language of this run: en or de.</source>
        <translation>Sprache für diesmal: en oder de.</translation>
    </message>
</context>
<context>
    <name>ringrule::AnimalEventsModel</name>
    <message>
        <source>since %1</source>
        <translation>seit %1</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Feeding</source>
        <translation>Fütterung</translation>
    </message>
    <message>
        <source>Diet</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source>Treatment</source>
        <translation>Behandlung</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Becken</translation>
    </message>
    <message>
        <source>Measure by hand</source>
        <translation>Maß von Hand</translation>
    </message>
    <message>
        <source>Decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Keeper</source>
        <translation>Pfleger</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
</context>
<context>
    <name>ringrule::AnimalPictures</name>
    <message>
        <source>Reading the photo</source>
        <translation>Foto wird gelesen</translation>
    </message>
</context>
<context>
    <name>ringrule::AnimalTableModel</name>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
    <message>
        <source>Standard length</source>
        <translation>Standardlänge</translation>
    </message>
    <message>
        <source>Trunk depth against what its tankmates&apos; let expect at its length: 100 is alike</source>
        <translation>Rumpftiefe gegen die bei seiner Länge nach den Beckengenossen erwartete: 100 ist gleich</translation>
    </message>
    <message>
        <source>Animal</source>
        <translation>Tier</translation>
    </message>
    <message>
        <source>Species</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Tank</source>
        <translation>Becken</translation>
    </message>
    <message>
        <source>Card</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>Length, mm</source>
        <translation>Länge, mm</translation>
    </message>
    <message>
        <source>Condition</source>
        <translation>Kondition</translation>
    </message>
    <message>
        <source>Last seen</source>
        <translation>Zuletzt gesehen</translation>
    </message>
    <message>
        <source>Needs a look</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>%1 on %2</source>
        <translation>%1 am %2</translation>
    </message>
    <message>
        <source>one session</source>
        <translation>ein Termin</translation>
    </message>
    <message numerus="yes">
        <source>from %1 to %2 mm in %n sessions</source>
        <translation>
            <numerusform>von %1 auf %2 mm in %n Termin</numerusform>
            <numerusform>von %1 auf %2 mm in %n Terminen</numerusform>
        </translation>
    </message>
    <message>
        <source>Growth</source>
        <translation>Wachstum</translation>
    </message>
</context>
<context>
    <name>ringrule::AnimalsPage</name>
    <message>
        <source>Save the animal&apos;s sheet</source>
        <translation>Blatt des Tieres speichern</translation>
    </message>
    <message>
        <source>Pages (*.pdf)</source>
        <translation>Seiten (*.pdf)</translation>
    </message>
    <message>
        <source>The sheet was saved in %1.</source>
        <translation>Das Blatt wurde in %1 gespeichert.</translation>
    </message>
    <message>
        <source>Every tank</source>
        <translation>Alle Becken</translation>
    </message>
    <message>
        <source>No animal yet</source>
        <translation>Noch kein Tier</translation>
    </message>
    <message>
        <source>No animal is chosen</source>
        <translation>Kein Tier gewählt</translation>
    </message>
    <message>
        <source>New animal… adds one. Its card in the photo then tells its photos from all others. Whole lists are read from a table: File, Import a table…</source>
        <translation>Neues Tier… trägt eines ein. Seine Karte im Foto ordnet ihm dann seine Fotos zu. Ganze Listen aus einer Tabelle: Datei, Tabelle einlesen…</translation>
    </message>
    <message>
        <source>What is known of it…</source>
        <translation>Was bekannt ist…</translation>
    </message>
    <message>
        <source>Move to another tank…</source>
        <translation>In ein anderes Becken…</translation>
    </message>
    <message>
        <source>Make one with another animal…</source>
        <translation>Mit einem anderen Tier vereinen…</translation>
    </message>
    <message>
        <source>Give later sessions to a new animal…</source>
        <translation>Spätere Termine einem neuen Tier geben…</translation>
    </message>
    <message>
        <source>What is known of %1</source>
        <translation>Was von %1 bekannt ist</translation>
    </message>
    <message>
        <source>Move %1 to another tank</source>
        <translation>%1 in ein anderes Becken setzen</translation>
    </message>
    <message>
        <source>From that day on it is compared with the animals of its new tank. A code that is new makes a new tank.</source>
        <translation>Von diesem Tag an wird es mit den Tieren des neuen Beckens verglichen. Ein neues Kürzel legt ein neues Becken an.</translation>
    </message>
    <message>
        <source>Make %1 one with another animal</source>
        <translation>%1 mit einem anderen Tier vereinen</translation>
    </message>
    <message>
        <source>When one animal was kept under two codes. All that is known of %1 becomes that of the other, and %1 is taken out. Undo parts them again.</source>
        <translation>Wenn ein Tier unter zwei Kürzeln geführt wurde. Alles von %1 geht an das andere, und %1 wird herausgenommen. Rückgängig trennt sie wieder.</translation>
    </message>
    <message>
        <source>Give later sessions of %1 to a new animal</source>
        <translation>Spätere Termine von %1 einem neuen Tier geben</translation>
    </message>
    <message>
        <source>When two animals were photographed under one code. The readings of sessions from that day on become those of the new one.</source>
        <translation>Wenn zwei Tiere unter einem Kürzel fotografiert wurden. Die Maße der Termine von diesem Tag an gehören dann dem neuen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Change entry: %1</source>
        <translation>Eintrag ändern: %1</translation>
    </message>
    <message>
        <source>The entry was taken out. Undo (Ctrl+Z) brings it back.</source>
        <translation>Der Eintrag wurde herausgenommen. Rückgängig (Strg+Z) bringt ihn zurück.</translation>
    </message>
</context>
<context>
    <name>ringrule::BoxCheckModel</name>
    <message>
        <source>?  cannot tell</source>
        <translation>?  nicht zu sagen</translation>
    </message>
    <message>
        <source>▼  does not hold</source>
        <translation>▼  besteht nicht</translation>
    </message>
    <message>
        <source>✓  measures true</source>
        <translation>✓  misst richtig</translation>
    </message>
    <message>
        <source>✓  plate as in the file</source>
        <translation>✓  Platte wie in der Datei</translation>
    </message>
    <message>
        <source>plate alone</source>
        <translation>Platte allein</translation>
    </message>
    <message>
        <source>%1 ± %2 of %3 mm</source>
        <translation>%1 ± %2 von %3 mm</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Rod read</source>
        <translation>Stab abgelesen</translation>
    </message>
    <message>
        <source>What was off</source>
        <translation>Was nicht stimmte</translation>
    </message>
</context>
<context>
    <name>ringrule::BoxPage</name>
    <message>
        <source>Save the scale plate</source>
        <translation>Maßplatte speichern</translation>
    </message>
    <message>
        <source>Pages (*.pdf)</source>
        <translation>Seiten (*.pdf)</translation>
    </message>
    <message>
        <source>The plate was saved in %1. Print it at 100 %, then measure its bars with a steel rule.</source>
        <translation>Die Platte wurde in %1 gespeichert. Bei 100 % drucken, dann die Balken mit einem Stahlmaßstab messen.</translation>
    </message>
    <message>
        <source>Box file</source>
        <translation>Boxdatei</translation>
    </message>
    <message>
        <source>Box files (*.json)</source>
        <translation>Boxdateien (*.json)</translation>
    </message>
</context>
<context>
    <name>ringrule::BoxStepModel</name>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
</context>
<context>
    <name>ringrule::BroodDialog</name>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Give the species: how long a brood is carried depends on it.</source>
        <translation>Geben Sie die Art an: Von ihr hängt ab, wie lange eine Brut getragen wird.</translation>
    </message>
    <message>
        <source>There is a brood of this code already.</source>
        <translation>Es gibt schon eine Brut mit diesem Kürzel.</translation>
    </message>
    <message>
        <source>Give the brood a code of its own.</source>
        <translation>Geben Sie der Brut ein eigenes Kürzel.</translation>
    </message>
</context>
<context>
    <name>ringrule::BroodEventDialog</name>
    <message>
        <source>Brood %1</source>
        <translation>Brut %1</translation>
    </message>
</context>
<context>
    <name>ringrule::BroodTableModel</name>
    <message>
        <source>%1, %2 days ago</source>
        <translation>%1, vor %2 Tagen</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>By %1</source>
        <translation>Nach %1</translation>
    </message>
    <message>
        <source>Brood</source>
        <translation>Brut</translation>
    </message>
    <message>
        <source>Species</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Father</source>
        <translation>Vater</translation>
    </message>
    <message>
        <source>Mother</source>
        <translation>Mutter</translation>
    </message>
    <message>
        <source>Born</source>
        <translation>Geboren</translation>
    </message>
    <message>
        <source>Young</source>
        <translation>Junge</translation>
    </message>
    <message>
        <source>Mean length, mm</source>
        <translation>Mittlere Länge, mm</translation>
    </message>
    <message>
        <source>Birth due</source>
        <translation>Geburt fällig</translation>
    </message>
    <message>
        <source>Animals</source>
        <translation>Tiere</translation>
    </message>
    <message>
        <source>%1, one animal</source>
        <translation>%1, ein Tier</translation>
    </message>
    <message>
        <source>%1, most within %2</source>
        <translation>%1, die meisten ± %2</translation>
    </message>
    <message>
        <source>Mean standard length of those measured last, and 1.96 standard deviations between them</source>
        <translation>Mittlere Standardlänge der zuletzt gemessenen und 1,96 Standardabweichungen zwischen ihnen</translation>
    </message>
</context>
<context>
    <name>ringrule::BroodsPage</name>
    <message numerus="yes">
        <source>, %n young</source>
        <translation>
            <numerusform>, %n Junges</numerusform>
            <numerusform>, %n Junge</numerusform>
        </translation>
    </message>
    <message>
        <source>Birth due between %1 and %2 (%3).</source>
        <translation>Geburt fällig zwischen %1 und %2 (%3).</translation>
    </message>
    <message>
        <source>Nothing is noted of this brood but its hatch day.</source>
        <translation>Von dieser Brut ist nur der Schlupftag bekannt.</translation>
    </message>
    <message>
        <source>Brood %1</source>
        <translation>Brut %1</translation>
    </message>
</context>
<context>
    <name>ringrule::ChartWidget</name>
    <message>
        <source>Wheel or + and −: draw the time out. Drag or arrow keys: move along it. Double click or 0: all of it. Click a reading: its photo.</source>
        <translation>Rad oder + und −: die Zeit auseinanderziehen. Ziehen oder Pfeiltasten: an ihr entlang. Doppelklick oder 0: alles. Klick auf einen Messpunkt: sein Foto.</translation>
    </message>
    <message numerus="yes">
        <source>%n days old</source>
        <translation>
            <numerusform>%n Tag alt</numerusform>
            <numerusform>%n Tage alt</numerusform>
        </translation>
    </message>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
</context>
<context>
    <name>ringrule::CheckPanel</name>
    <message>
        <source>?  The photo cannot tell.</source>
        <translation>?  Das Foto kann es nicht sagen.</translation>
    </message>
    <message>
        <source>▼  The box does not measure true as it is.</source>
        <translation>▼  Die Box misst so nicht richtig.</translation>
    </message>
    <message>
        <source>✓  The box measures true within %1 %.</source>
        <translation>✓  Die Box misst auf %1 % richtig.</translation>
    </message>
    <message>
        <source>✓  The plate is as the box file says. Whether the print is true to scale only a rod or a steel rule can tell.</source>
        <translation>✓  Die Platte ist wie in der Boxdatei. Ob der Druck maßhaltig ist, kann nur ein Stab oder ein Stahlmaßstab sagen.</translation>
    </message>
    <message>
        <source>%1 of %2 markers, corners within %3 px (%4 mm) RMS</source>
        <translation>%1 von %2 Markern, Ecken auf %3 px (%4 mm) RMS</translation>
    </message>
    <message>
        <source>camera %1° off square</source>
        <translation>Kamera %1° schräg</translation>
    </message>
    <message>
        <source>camera %1 mm before the window by this photo</source>
        <translation>Kamera nach diesem Foto %1 mm vor der Scheibe</translation>
    </message>
    <message>
        <source>rod %1 ± %2 mm of %3 mm</source>
        <translation>Stab %1 ± %2 mm von %3 mm</translation>
    </message>
    <message>
        <source>the plate alone</source>
        <translation>der Platte allein</translation>
    </message>
    <message>
        <source>a round rod of</source>
        <translation>eines runden Stabes von</translation>
    </message>
    <message>
        <source>a flat strip of</source>
        <translation>eines flachen Streifens von</translation>
    </message>
    <message>
        <source>Photo of the plate or rod</source>
        <translation>Foto der Platte oder des Stabes</translation>
    </message>
    <message>
        <source>Photos (*.jpg *.jpeg *.png)</source>
        <translation>Fotos (*.jpg *.jpeg *.png)</translation>
    </message>
    <message>
        <source>A job is running. Wait for it, or stop it below.</source>
        <translation>Es läuft schon etwas. Warten Sie, oder halten Sie es unten an.</translation>
    </message>
    <message>
        <source>Checking the box</source>
        <translation>Die Box wird geprüft</translation>
    </message>
</context>
<context>
    <name>ringrule::Collection</name>
    <message>
        <source>not told</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>not identified</source>
        <translation>nicht erkannt</translation>
    </message>
    <message>
        <source>new animal %1</source>
        <translation>neues Tier %1</translation>
    </message>
    <message>
        <source>move of %1 to %2</source>
        <translation>Umzug von %1 nach %2</translation>
    </message>
    <message>
        <source>%1 and %2 made one</source>
        <translation>%1 und %2 vereint</translation>
    </message>
    <message>
        <source>sessions of %1 given to %2</source>
        <translation>Termine von %1 an %2</translation>
    </message>
    <message>
        <source>new entry</source>
        <translation>neuer Eintrag</translation>
    </message>
    <message>
        <source>change of an entry</source>
        <translation>Änderung eines Eintrags</translation>
    </message>
    <message>
        <source>entry taken out</source>
        <translation>Eintrag herausgenommen</translation>
    </message>
    <message>
        <source>table read in</source>
        <translation>Tabelle eingelesen</translation>
    </message>
    <message>
        <source>decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>decision taken back</source>
        <translation>Entscheidung zurückgenommen</translation>
    </message>
    <message>
        <source>new brood %1</source>
        <translation>neue Brut %1</translation>
    </message>
    <message>
        <source>note of a brood</source>
        <translation>Notiz zu einer Brut</translation>
    </message>
    <message>
        <source>acceptance of %1</source>
        <translation>Annahme von %1</translation>
    </message>
    <message>
        <source>animal of %1</source>
        <translation>Tier von %1</translation>
    </message>
</context>
<context>
    <name>ringrule::CoverageWidget</name>
    <message>
        <source>%1 of %2 cells hold no corner</source>
        <translation>%1 von %2 Feldern ohne Ecke</translation>
    </message>
</context>
<context>
    <name>ringrule::CutTool</name>
    <message>
        <source>Draw a line across, from outside to outside, where one animal ends and the other begins. By keyboard: arrow keys, Space at both ends.</source>
        <translation>Eine Linie quer ziehen, von außen nach außen, wo ein Tier endet und das andere beginnt. Mit der Tastatur: Pfeiltasten, Leertaste an beiden Enden.</translation>
    </message>
</context>
<context>
    <name>ringrule::DecisionPanel</name>
    <message>
        <source>Change the diet</source>
        <translation>Futter wechseln</translation>
    </message>
    <message>
        <source>Measure again</source>
        <translation>Noch einmal messen</translation>
    </message>
    <message>
        <source>Watch its feeding</source>
        <translation>Fressen beobachten</translation>
    </message>
    <message>
        <source>Ask the veterinarian</source>
        <translation>Tierarzt fragen</translation>
    </message>
    <message>
        <source>Dismiss</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Acted otherwise</source>
        <translation>Anders gehandelt</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>Why it is no reason to act (needed)</source>
        <translation>Warum es kein Grund zum Handeln ist (nötig)</translation>
    </message>
    <message>
        <source>What exactly, and why</source>
        <translation>Was genau, und warum</translation>
    </message>
    <message>
        <source>look again on %1</source>
        <translation>wieder ansehen am %1</translation>
    </message>
    <message>
        <source>no session since</source>
        <translation>kein Termin seither</translation>
    </message>
    <message>
        <source>still told on %1, by %2</source>
        <translation>am %1 noch gemeldet, mit %2</translation>
    </message>
    <message>
        <source>still told on %1</source>
        <translation>am %1 noch gemeldet</translation>
    </message>
    <message>
        <source>not told any more on %1</source>
        <translation>am %1 nicht mehr gemeldet</translation>
    </message>
</context>
<context>
    <name>ringrule::DietChangeModel</name>
    <message>
        <source>Animal</source>
        <translation>Tier</translation>
    </message>
    <message>
        <source>Changed on</source>
        <translation>Umgestellt am</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Auf</translation>
    </message>
    <message>
        <source>mm/day before</source>
        <translation>mm/Tag vorher</translation>
    </message>
    <message>
        <source>after</source>
        <translation>nachher</translation>
    </message>
    <message>
        <source>Growth</source>
        <translation>Wachstum</translation>
    </message>
    <message>
        <source>Depth, % before</source>
        <translation>Tiefe, % vorher</translation>
    </message>
    <message>
        <source>Condition</source>
        <translation>Kondition</translation>
    </message>
</context>
<context>
    <name>ringrule::DietGroupModel</name>
    <message>
        <source>Diet</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Animals</source>
        <translation>Tiere</translation>
    </message>
    <message>
        <source>Tanks</source>
        <translation>Becken</translation>
    </message>
    <message>
        <source>%1, one tank alone</source>
        <translation>%1, nur ein Becken</translation>
    </message>
    <message>
        <source>%1, one animal alone</source>
        <translation>%1, nur ein Tier</translation>
    </message>
    <message>
        <source>%1 (%2 to %3)</source>
        <translation>%1 (%2 bis %3)</translation>
    </message>
    <message>
        <source>Animals that kept one diet in one tank throughout, with lengths on two days</source>
        <translation>Tiere, die durchgehend ein Futter in einem Becken hatten, mit Längen an zwei Tagen</translation>
    </message>
    <message>
        <source>Mean growth on the diet, of all its animals and sessions together, with its 95 % interval</source>
        <translation>Mittleres Wachstum mit dem Futter, aus allen seinen Tieren und Terminen zusammen, mit 95-%-Intervall</translation>
    </message>
    <message>
        <source>From each animal&apos;s first session of this time to its last. Growth on the diet rests on the sessions between as well, so it need not be the mean of these.</source>
        <translation>Vom ersten Termin jedes Tiers in dieser Zeit bis zum letzten. Das Wachstum mit dem Futter beruht auch auf den Terminen dazwischen und muss daher nicht das Mittel davon sein.</translation>
    </message>
    <message>
        <source>Growth, % a day (95 %)</source>
        <translation>Wachstum, % am Tag (95 %)</translation>
    </message>
    <message>
        <source>Growth, mm/day (95 %)</source>
        <translation>Wachstum, mm/Tag (95 %)</translation>
    </message>
    <message>
        <source>Each animal&apos;s own rate, mm/day</source>
        <translation>Eigene Rate je Tier, mm/Tag</translation>
    </message>
</context>
<context>
    <name>ringrule::DietsPage</name>
    <message>
        <source>Choose a first day that lies before the last.</source>
        <translation>Wählen Sie einen ersten Tag, der vor dem letzten liegt.</translation>
    </message>
    <message>
        <source>New diet</source>
        <translation>Neues Futter</translation>
    </message>
    <message>
        <source>Diet of a tank</source>
        <translation>Futter eines Beckens</translation>
    </message>
    <message>
        <source>No animal has two sessions before a change of food yet. A change of diet is noted on the page Animals: Note…, Diet. After two more sessions the animal stands here, before and after.</source>
        <translation>Noch kein Tier hat zwei Termine vor einer Umstellung. Eine Umstellung wird auf der Seite Tiere notiert: Notiz…, Futter. Nach zwei weiteren Terminen steht das Tier hier, vorher und nachher.</translation>
    </message>
    <message>
        <source>Diets that two groups of animals keep over the same time are compared here.</source>
        <translation>Hier wird Futter verglichen, das zwei Gruppen von Tieren zur selben Zeit bekommen.</translation>
    </message>
</context>
<context>
    <name>ringrule::FindingListModel</name>
    <message>
        <source>Collection</source>
        <translation>Sammlung</translation>
    </message>
</context>
<context>
    <name>ringrule::FindingsPage</name>
    <message>
        <source>Each with its reason, its evidence and what to do next.</source>
        <translation>Jedes mit Grund, Beleg und nächstem Schritt.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>cannot tell</source>
        <translation>nicht zu sagen</translation>
    </message>
    <message>
        <source>◷  %1: look again (%2), due %3</source>
        <translation>◷  %1: wieder ansehen (%2), fällig %3</translation>
    </message>
    <message>
        <source>No animal needs a look after the session of %1.

What was told after earlier sessions: choose one above.</source>
        <translation>Nach dem Termin vom %1 ist kein Tier anzusehen.

Was nach früheren Terminen gemeldet wurde: oben einen wählen.</translation>
    </message>
    <message>
        <source>Nothing has been measured yet.

After two sessions of a group, animals that lag behind or get thin stand here, with the evidence and what to do next.</source>
        <translation>Noch nichts gemessen.

Nach zwei Terminen einer Gruppe stehen hier Tiere, die zurückbleiben oder dünn werden, mit Beleg und nächstem Schritt.</translation>
    </message>
    <message>
        <source>

What became of what was decided:
</source>
        <translation>

Was aus Entscheidungen wurde:
</translation>
    </message>
</context>
<context>
    <name>ringrule::FirstSteps</name>
    <message>
        <source>Set up the box</source>
        <translation>Die Messbox einrichten</translation>
    </message>
    <message>
        <source>Add the animals</source>
        <translation>Die Tiere eintragen</translation>
    </message>
</context>
<context>
    <name>ringrule::GrowthPage</name>
    <message>
        <source>Standard length</source>
        <translation>Standardlänge</translation>
    </message>
    <message>
        <source>Depth ratio</source>
        <translation>Tiefenverhältnis</translation>
    </message>
    <message>
        <source>Girth ratio</source>
        <translation>Umfangsverhältnis</translation>
    </message>
    <message>
        <source>Width ratio</source>
        <translation>Breitenverhältnis</translation>
    </message>
    <message>
        <source>Age</source>
        <translation>Alter</translation>
    </message>
    <message>
        <source>Date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>Save the chart</source>
        <translation>Diagramm speichern</translation>
    </message>
    <message>
        <source>Pictures (*.png)</source>
        <translation>Bilder (*.png)</translation>
    </message>
    <message>
        <source>The chart was saved in %1.</source>
        <translation>Das Diagramm wurde in %1 gespeichert.</translation>
    </message>
    <message>
        <source>Drawings (*.svg)</source>
        <translation>Zeichnungen (*.svg)</translation>
    </message>
    <message>
        <source>Tables of readings (*.csv)</source>
        <translation>Tabellen der Messpunkte (*.csv)</translation>
    </message>
    <message>
        <source>Age if known</source>
        <translation>Alter, wenn bekannt</translation>
    </message>
    <message>
        <source>Every animal</source>
        <translation>Alle Tiere</translation>
    </message>
    <message>
        <source>Brood %1</source>
        <translation>Brut %1</translation>
    </message>
    <message>
        <source>Nothing counts yet. Measure a folder of photos on the page Photo session and accept what was measured: each accepted photo is a point here.</source>
        <translation>Noch zählt nichts. Auf der Seite Fototermin einen Ordner mit Fotos messen und annehmen, was gemessen wurde: Jedes angenommene Foto ist hier ein Punkt.</translation>
    </message>
    <message>
        <source>Fitting the curve</source>
        <translation>Kurve wird berechnet</translation>
    </message>
</context>
<context>
    <name>ringrule::HistoryTableModel</name>
    <message>
        <source>Brooding or carrying: not judged on girth.</source>
        <translation>Trägt: nicht nach dem Umfang beurteilt.</translation>
    </message>
    <message>
        <source>  (carrying)</source>
        <translation>  (trägt)</translation>
    </message>
    <message>
        <source>Session</source>
        <translation>Termin</translation>
    </message>
    <message>
        <source>Age, days</source>
        <translation>Alter, Tage</translation>
    </message>
    <message>
        <source>Standard length, mm</source>
        <translation>Standardlänge, mm</translation>
    </message>
    <message>
        <source>Trunk depth, mm</source>
        <translation>Rumpftiefe, mm</translation>
    </message>
    <message>
        <source>Depth ratio</source>
        <translation>Tiefe ÷ Länge</translation>
    </message>
    <message>
        <source>Girth ratio</source>
        <translation>Umfang ÷ Länge</translation>
    </message>
    <message>
        <source>Belly hollow, %</source>
        <translation>Bauch hohl, %</translation>
    </message>
    <message>
        <source>Side photos</source>
        <translation>Seitenfotos</translation>
    </message>
</context>
<context>
    <name>ringrule::ImportDialog</name>
    <message>
        <source>left out</source>
        <translation>weggelassen</translation>
    </message>
    <message>
        <source>Line %1: %2</source>
        <translation>Zeile %1: %2</translation>
    </message>
    <message>
        <source>And %1 more lines that are bad.</source>
        <translation>Und %1 weitere fehlerhafte Zeilen.</translation>
    </message>
    <message>
        <source>%1 rows give %2 entries.</source>
        <translation>%1 Zeilen geben %2 Einträge.</translation>
    </message>
    <message>
        <source>Nothing is read in while a line is bad: mend the table and choose it again.</source>
        <translation>Solange eine Zeile fehlerhaft ist, wird nichts eingelesen: die Tabelle berichtigen und neu wählen.</translation>
    </message>
    <message>
        <source>not told (2031-01-06 only)</source>
        <translation>nicht gesagt (nur 2031-01-06)</translation>
    </message>
    <message>
        <source>day first</source>
        <translation>Tag zuerst</translation>
    </message>
    <message>
        <source>month first</source>
        <translation>Monat zuerst</translation>
    </message>
    <message>
        <source>Read in</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Tables (*.csv *.txt)</source>
        <translation>Tabellen (*.csv *.txt)</translation>
    </message>
    <message>
        <source>Choose a table whose first line names its columns.</source>
        <translation>Eine Tabelle wählen, deren erste Zeile die Spalten nennt.</translation>
    </message>
</context>
<context>
    <name>ringrule::LandmarkItem</name>
    <message>
        <source>, by hand</source>
        <translation>, von Hand</translation>
    </message>
</context>
<context>
    <name>ringrule::LensPanel</name>
    <message>
        <source>Focal length %1 px, standard error %2 px; corners within %3 px RMS.</source>
        <translation>Brennweite %1 px, Standardfehler %2 px; Ecken auf %3 px RMS.</translation>
    </message>
    <message>
        <source>this box&apos;s plate</source>
        <translation>der Platte dieser Box</translation>
    </message>
    <message>
        <source>a chessboard, corners</source>
        <translation>einem Schachbrett, Ecken</translation>
    </message>
    <message>
        <source>The lens is in the box file.</source>
        <translation>Das Objektiv steht in der Boxdatei.</translation>
    </message>
    <message>
        <source>Lens photos</source>
        <translation>Objektivfotos</translation>
    </message>
    <message>
        <source>Photos (*.jpg *.jpeg *.png)</source>
        <translation>Fotos (*.jpg *.jpeg *.png)</translation>
    </message>
    <message>
        <source>A job is running. Wait for it, or stop it below.</source>
        <translation>Es läuft schon etwas. Warten Sie, oder halten Sie es unten an.</translation>
    </message>
    <message>
        <source>Calibrating the lens</source>
        <translation>Das Objektiv wird kalibriert</translation>
    </message>
    <message>
        <source>Every photo is good.</source>
        <translation>Jedes Foto ist gut.</translation>
    </message>
    <message numerus="yes">
        <source>Select a photo to read what is wrong with it: %n to look at.</source>
        <translation>
            <numerusform>Wählen Sie ein Foto, um zu lesen, was daran falsch ist: %n anzusehen.</numerusform>
            <numerusform>Wählen Sie ein Foto, um zu lesen, was daran falsch ist: %n anzusehen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Corners seen in each part of the frame: %1 % of it is covered.</source>
        <translation>Ecken in jedem Teil des Bildes: %1 % sind abgedeckt.</translation>
    </message>
</context>
<context>
    <name>ringrule::LensPhotoModel</name>
    <message>
        <source>✓  used</source>
        <translation>✓  verwendet</translation>
    </message>
    <message>
        <source>○  used, repeats another</source>
        <translation>○  verwendet, wiederholt ein anderes</translation>
    </message>
    <message>
        <source>○  used, blurred</source>
        <translation>○  verwendet, unscharf</translation>
    </message>
    <message>
        <source>▼  left out: does not fit</source>
        <translation>▼  weggelassen: passt nicht</translation>
    </message>
    <message>
        <source>▼  left out: no board</source>
        <translation>▼  weggelassen: keine Tafel</translation>
    </message>
    <message>
        <source>▼  left out: other size</source>
        <translation>▼  weggelassen: andere Größe</translation>
    </message>
    <message>
        <source>▼  left out: other camera</source>
        <translation>▼  weggelassen: andere Kamera</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>How far the corners lie from where the fit puts them, root mean square</source>
        <translation>Wie weit die Ecken von der Anpassung liegen, quadratisches Mittel</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>What became of it</source>
        <translation>Was daraus wurde</translation>
    </message>
    <message>
        <source>RMS, px</source>
        <translation>RMS, px</translation>
    </message>
    <message>
        <source>Tilt</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>Corners</source>
        <translation>Ecken</translation>
    </message>
</context>
<context>
    <name>ringrule::MainWindow</name>
    <message>
        <source>Photo session</source>
        <translation>Fototermin</translation>
    </message>
    <message>
        <source>Animals</source>
        <translation>Tiere</translation>
    </message>
    <message>
        <source>Growth</source>
        <translation>Wachstum</translation>
    </message>
    <message>
        <source>Needs a look</source>
        <translation>Ansehen</translation>
    </message>
    <message>
        <source>Diets</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Broods</source>
        <translation>Bruten</translation>
    </message>
    <message>
        <source>Box</source>
        <translation>Messbox</translation>
    </message>
    <message>
        <source>The collection is ready. Choose New session… to measure a folder of photos.</source>
        <translation>Die Sammlung ist bereit. „Neuer Termin…“ misst einen Ordner mit Fotos.</translation>
    </message>
    <message>
        <source>%1 – Ringrule</source>
        <translation>%1 – Ringrule</translation>
    </message>
    <message>
        <source>Looking through the animals</source>
        <translation>Die Tiere werden durchgesehen</translation>
    </message>
    <message>
        <source>Needs a look  (%1)</source>
        <translation>Ansehen  (%1)</translation>
    </message>
    <message>
        <source>Measuring photos</source>
        <translation>Fotos werden gemessen</translation>
    </message>
    <message>
        <source>%1 photos: %2 animals measured, %3 not measured, %4 to look at before they count.</source>
        <translation>%1 Fotos: %2 Tiere gemessen, %3 nicht gemessen, %4 anzusehen, bevor sie zählen.</translation>
    </message>
    <message>
        <source>And %1 more: see the list of photos.</source>
        <translation>Und %1 weitere: siehe die Liste der Fotos.</translation>
    </message>
    <message>
        <source>Open a collection</source>
        <translation>Sammlung öffnen</translation>
    </message>
    <message>
        <source>An empty folder for the new collection</source>
        <translation>Ein leerer Ordner für die neue Sammlung</translation>
    </message>
    <message>
        <source>The demo&apos;s photos were not found beside the program. In a terminal, in the folder that holds sample_images, run: ringrule demo. Then open demo-out/collection.</source>
        <translation>Die Beispielfotos liegen nicht beim Programm. Im Terminal, in dem Ordner mit sample_images: ringrule demo. Dann demo-out/collection öffnen.</translation>
    </message>
    <message>
        <source>A folder in which to put the demo collection</source>
        <translation>Ein Ordner, in den die Beispielsammlung kommt</translation>
    </message>
    <message>
        <source>Measuring the demo&apos;s photos</source>
        <translation>Die Beispielfotos werden gemessen</translation>
    </message>
    <message>
        <source>A job is running. Wait for it, or stop it below.</source>
        <translation>Es läuft schon etwas. Warten Sie, oder halten Sie es unten an.</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;Cautions</source>
        <translation>&amp;Hinweise</translation>
    </message>
    <message>
        <source>&amp;About Ringrule</source>
        <translation>&amp;Über Ringrule</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Open collection…</source>
        <translation>Sammlung ö&amp;ffnen…</translation>
    </message>
    <message>
        <source>New &amp;collection…</source>
        <translation>Neue &amp;Sammlung…</translation>
    </message>
    <message>
        <source>Ctrl+Shift+N</source>
        <translation>Ctrl+Shift+N</translation>
    </message>
    <message>
        <source>Try the &amp;demo…</source>
        <translation>&amp;Beispiel ausprobieren…</translation>
    </message>
    <message>
        <source>&amp;New photo session…</source>
        <translation>&amp;Neuer Fototermin…</translation>
    </message>
    <message>
        <source>&amp;Save the growth chart…</source>
        <translation>&amp;Wachstumsdiagramm speichern…</translation>
    </message>
    <message>
        <source>&amp;Print the growth chart…</source>
        <translation>Wachstumsdiagramm &amp;drucken…</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>B&amp;eenden</translation>
    </message>
    <message>
        <source>&amp;Photo</source>
        <translation>F&amp;oto</translation>
    </message>
    <message>
        <source>&amp;Accept</source>
        <translation>&amp;Annehmen</translation>
    </message>
    <message>
        <source>Ctrl+Return</source>
        <translation>Ctrl+Return</translation>
    </message>
    <message>
        <source>&amp;Next photo</source>
        <translation>&amp;Nächstes Foto</translation>
    </message>
    <message>
        <source>Ctrl+Down</source>
        <translation>Ctrl+Down</translation>
    </message>
    <message>
        <source>&amp;Previous photo</source>
        <translation>&amp;Voriges Foto</translation>
    </message>
    <message>
        <source>Ctrl+Up</source>
        <translation>Ctrl+Up</translation>
    </message>
    <message>
        <source>&amp;Move landmarks</source>
        <translation>&amp;Messpunkte verschieben</translation>
    </message>
    <message>
        <source>Ctrl+M</source>
        <translation>Ctrl+M</translation>
    </message>
    <message>
        <source>&amp;Trace along the edge</source>
        <translation>Am &amp;Rand nachziehen</translation>
    </message>
    <message>
        <source>Ctrl+T</source>
        <translation>Ctrl+T</translation>
    </message>
    <message>
        <source>P&amp;ull the outline</source>
        <translation>&amp;Umriss ziehen</translation>
    </message>
    <message>
        <source>Ctrl+L</source>
        <translation>Ctrl+L</translation>
    </message>
    <message>
        <source>&amp;Cut two animals apart</source>
        <translation>Zwei &amp;Tiere trennen</translation>
    </message>
    <message>
        <source>Ctrl+K</source>
        <translation>Ctrl+K</translation>
    </message>
    <message>
        <source>Zoom &amp;in</source>
        <translation>Ver&amp;größern</translation>
    </message>
    <message>
        <source>Ctrl++</source>
        <translation>Ctrl++</translation>
    </message>
    <message>
        <source>Zoom &amp;out</source>
        <translation>Ver&amp;kleinern</translation>
    </message>
    <message>
        <source>Ctrl+-</source>
        <translation>Ctrl+-</translation>
    </message>
    <message>
        <source>&amp;Fit the animal</source>
        <translation>Tier ein&amp;passen</translation>
    </message>
    <message>
        <source>Ctrl+0</source>
        <translation>Ctrl+0</translation>
    </message>
    <message>
        <source>&amp;Go to</source>
        <translation>&amp;Gehe zu</translation>
    </message>
    <message>
        <source>Ctrl+%1</source>
        <translation>Ctrl+%1</translation>
    </message>
    <message>
        <source>Colours as the &amp;system</source>
        <translation>Farben wie das &amp;System</translation>
    </message>
    <message>
        <source>&amp;Light colours</source>
        <translation>&amp;Helle Farben</translation>
    </message>
    <message>
        <source>&amp;Dark colours</source>
        <translation>&amp;Dunkle Farben</translation>
    </message>
    <message>
        <source>&amp;Text size</source>
        <translation>Schrift&amp;größe</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Progress of the running job</source>
        <translation>Fortschritt der laufenden Arbeit</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop the running job</source>
        <translation>Laufende Arbeit anhalten</translation>
    </message>
    <message>
        <source>Stopping…</source>
        <translation>Wird angehalten…</translation>
    </message>
    <message>
        <source>Stopped. The collection is as it was before.</source>
        <translation>Angehalten. Die Sammlung ist, wie sie vorher war.</translation>
    </message>
    <message>
        <source>About Ringrule</source>
        <translation>Über Ringrule</translation>
    </message>
    <message>
        <source>&lt;h3&gt;Ringrule %1&lt;/h3&gt;&lt;p&gt;Measures seahorses and pipefish from photographs.&lt;/p&gt;&lt;p&gt;Free software under the GNU General Public License, version 3 or later, without any warranty.&lt;/p&gt;</source>
        <translation>&lt;h3&gt;Ringrule %1&lt;/h3&gt;&lt;p&gt;Misst Seepferdchen und Seenadeln auf Fotos.&lt;/p&gt;&lt;p&gt;Freie Software unter der GNU General Public License, Version 3 oder später, ohne jede Gewähr.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>&amp;Language</source>
        <translation>S&amp;prache</translation>
    </message>
    <message>
        <source>As the system</source>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>The language changes when Ringrule is started again.</source>
        <translation>Die Sprache wechselt beim nächsten Start von Ringrule.</translation>
    </message>
    <message>
        <source>&amp;Import a table…</source>
        <translation>Tabelle &amp;einlesen…</translation>
    </message>
    <message>
        <source>Se&amp;ttings…</source>
        <translation>Einste&amp;llungen…</translation>
    </message>
    <message>
        <source>Ctrl+,</source>
        <translation>Ctrl+,</translation>
    </message>
    <message>
        <source>Take a&amp;gain</source>
        <translation>Neu auf&amp;nehmen</translation>
    </message>
    <message>
        <source>Ctrl+R</source>
        <translation>Ctrl+R</translation>
    </message>
    <message numerus="yes">
        <source>%n entries were read in. Undo takes them out again.</source>
        <translation>
            <numerusform>%n Eintrag wurde eingelesen. Rückgängig nimmt ihn wieder heraus.</numerusform>
            <numerusform>%n Einträge wurden eingelesen. Rückgängig nimmt sie wieder heraus.</numerusform>
        </translation>
    </message>
    <message>
        <source>Taken back or made again: %1.</source>
        <translation>Zurückgenommen oder wiederholt: %1.</translation>
    </message>
    <message>
        <source>Open or start a collection first, then drop the photos again.</source>
        <translation>Erst eine Sammlung öffnen oder anlegen, dann die Fotos noch einmal hierher ziehen.</translation>
    </message>
    <message>
        <source>The box file was added.</source>
        <translation>Die Boxdatei wurde übernommen.</translation>
    </message>
</context>
<context>
    <name>ringrule::MeasureTableModel</name>
    <message>
        <source>cannot tell</source>
        <translation>nicht zu sagen</translation>
    </message>
    <message>
        <source>The last session before this one that counts</source>
        <translation>Der letzte Termin vor diesem, der zählt</translation>
    </message>
    <message>
        <source>in mm</source>
        <translation>in mm</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Last time</source>
        <translation>Letztes Mal</translation>
    </message>
</context>
<context>
    <name>ringrule::MessageStrip</name>
    <message>
        <source>Put this message away</source>
        <translation>Meldung weglegen</translation>
    </message>
    <message>
        <source>Message</source>
        <translation>Meldung</translation>
    </message>
</context>
<context>
    <name>ringrule::NewAnimalDialog</name>
    <message>
        <source>pipefish</source>
        <translation>Seenadel</translation>
    </message>
    <message>
        <source>seahorse</source>
        <translation>Seepferdchen</translation>
    </message>
    <message>
        <source>other long fish</source>
        <translation>anderer langer Fisch</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>female</source>
        <translation>weiblich</translation>
    </message>
    <message>
        <source>male</source>
        <translation>männlich</translation>
    </message>
    <message>
        <source>on</source>
        <translation>am</translation>
    </message>
    <message>
        <source>within a week of</source>
        <translation>auf eine Woche genau am</translation>
    </message>
    <message>
        <source>within a month of</source>
        <translation>auf einen Monat genau am</translation>
    </message>
    <message>
        <source>Give the species: only like animals are compared.</source>
        <translation>Geben Sie die Art an: Nur gleiche Tiere werden verglichen.</translation>
    </message>
    <message>
        <source>Card %1 belongs to %2.</source>
        <translation>Karte %1 gehört %2.</translation>
    </message>
    <message>
        <source>There is an animal of this code already.</source>
        <translation>Es gibt schon ein Tier mit diesem Kürzel.</translation>
    </message>
    <message>
        <source>Give the animal a code of its own.</source>
        <translation>Geben Sie dem Tier ein eigenes Kürzel.</translation>
    </message>
</context>
<context>
    <name>ringrule::NewBoxDialog</name>
    <message>
        <source>%1 × %2 mm: %3</source>
        <translation>%1 × %2 mm: %3</translation>
    </message>
    <message>
        <source>Save the plate as PDF…</source>
        <translation>Platte als PDF speichern…</translation>
    </message>
    <message>
        <source>Give the box a name of its own.</source>
        <translation>Geben Sie der Box einen eigenen Namen.</translation>
    </message>
    <message>
        <source>There is a box of this name already.</source>
        <translation>Es gibt schon eine Box dieses Namens.</translation>
    </message>
    <message>
        <source>pale, for most animals</source>
        <translation>hell, für die meisten Tiere</translation>
    </message>
    <message>
        <source>dark, for pale and clear animals</source>
        <translation>dunkel, für blasse und durchsichtige Tiere</translation>
    </message>
</context>
<context>
    <name>ringrule::NewSessionDialog</name>
    <message>
        <source>Measure the photos</source>
        <translation>Fotos messen</translation>
    </message>
    <message>
        <source>Folder of photos</source>
        <translation>Fotoordner</translation>
    </message>
    <message>
        <source>Box file</source>
        <translation>Boxdatei</translation>
    </message>
    <message>
        <source>Box files (*.json)</source>
        <translation>Boxdateien (*.json)</translation>
    </message>
    <message>
        <source>Add the file of the box in which the photos were taken.</source>
        <translation>Fügen Sie die Datei der Box hinzu, in der die Fotos gemacht wurden.</translation>
    </message>
    <message>
        <source>Choose the folder that holds the photos.</source>
        <translation>Wählen Sie den Ordner mit den Fotos.</translation>
    </message>
</context>
<context>
    <name>ringrule::PhotoDesk</name>
    <message>
        <source>pull of the outline</source>
        <translation>Umriss gezogen</translation>
    </message>
    <message>
        <source>trace of the edge</source>
        <translation>Rand nachgezogen</translation>
    </message>
    <message>
        <source>A trace begins and ends on the outline, or goes all round an animal.</source>
        <translation>Eine Linie beginnt und endet auf dem Umriss, oder sie geht ganz um ein Tier.</translation>
    </message>
    <message>
        <source>trace of the animal</source>
        <translation>Tier umfahren</translation>
    </message>
    <message>
        <source>trace of another animal</source>
        <translation>weiteres Tier umfahren</translation>
    </message>
    <message>
        <source>cut</source>
        <translation>getrennt</translation>
    </message>
    <message>
        <source>Corrections of last time that were not accepted are shown again. Undo takes them back.</source>
        <translation>Korrekturen vom letzten Mal, die nicht angenommen wurden, sind wieder zu sehen. Rückgängig nimmt sie zurück.</translation>
    </message>
</context>
<context>
    <name>ringrule::PhotoDraft</name>
    <message>
        <source>move of %1</source>
        <translation>%1 verschoben</translation>
    </message>
    <message>
        <source>“tail closed”</source>
        <translation>„Schwanz geschlossen“</translation>
    </message>
    <message>
        <source>“tail open”</source>
        <translation>„Schwanz offen“</translation>
    </message>
    <message>
        <source>“brooding”</source>
        <translation>„trägt“</translation>
    </message>
    <message>
        <source>“not brooding”</source>
        <translation>„trägt nicht“</translation>
    </message>
    <message>
        <source>corrections of last time</source>
        <translation>Korrekturen vom letzten Mal</translation>
    </message>
</context>
<context>
    <name>ringrule::PhotoListModel</name>
    <message numerus="yes">
        <source>%n animals, %1</source>
        <translation>
            <numerusform>%n Tier, %1</numerusform>
            <numerusform>%n Tiere, %1</numerusform>
        </translation>
    </message>
    <message>
        <source>no animal</source>
        <translation>kein Tier</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>ringrule::PhotoReader</name>
    <message>
        <source>Reading the photo</source>
        <translation>Das Foto wird gelesen</translation>
    </message>
</context>
<context>
    <name>ringrule::PhotoStrip</name>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
    <message>
        <source>No photo from the side that counts yet.</source>
        <translation>Noch kein Foto von der Seite, das zählt.</translation>
    </message>
</context>
<context>
    <name>ringrule::PlanePanel</name>
    <message>
        <source>The animal&apos;s plane is in the box file.</source>
        <translation>Der Ort des Tieres steht in der Boxdatei.</translation>
    </message>
</context>
<context>
    <name>ringrule::PrintPanel</name>
    <message>
        <source>Save the animal cards</source>
        <translation>Tierkarten speichern</translation>
    </message>
    <message>
        <source>Pages (*.pdf)</source>
        <translation>Seiten (*.pdf)</translation>
    </message>
    <message>
        <source>%1 cards on %2 sheets were saved in %3. Print them at 100 %.</source>
        <translation>%1 Karten auf %2 Blättern wurden in %3 gespeichert. Bei 100 % drucken.</translation>
    </message>
    <message>
        <source>Box file: %1</source>
        <translation>Boxdatei: %1</translation>
    </message>
</context>
<context>
    <name>ringrule::PullTool</name>
    <message>
        <source>Drag the outline to where it belongs; zoom in to pull a finer piece. By keyboard: arrow keys, Space to take hold, Space to let go.</source>
        <translation>Den Umriss dorthin ziehen, wo er hingehört; vergrößert zieht man ein feineres Stück. Mit der Tastatur: Pfeiltasten, Leertaste zum Greifen und zum Loslassen.</translation>
    </message>
</context>
<context>
    <name>ringrule::RecordDialog</name>
    <message>
        <source>not told</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>one, two, three</source>
        <translation>eins, zwei, drei</translation>
    </message>
    <message>
        <source>Still needed: %1.</source>
        <translation>Fehlt noch: %1.</translation>
    </message>
</context>
<context>
    <name>ringrule::RulePanel</name>
    <message>
        <source>Printed at %1 % across and %2 % down.</source>
        <translation>Gedruckt mit %1 % quer und %2 % hoch.</translation>
    </message>
    <message>
        <source>Type what the rule reads. A bar that is as long as it says is typed in too.</source>
        <translation>Geben Sie ein, was der Maßstab zeigt – auch wenn ein Balken so lang ist, wie er sagt.</translation>
    </message>
    <message>
        <source>The plate in the box file is corrected: printed at %1 % across and %2 % down.</source>
        <translation>Die Platte in der Boxdatei ist berichtigt: gedruckt mit %1 % quer und %2 % hoch.</translation>
    </message>
</context>
<context>
    <name>ringrule::SessionPage</name>
    <message>
        <source>The photo cannot be shown.</source>
        <translation>Das Foto kann nicht gezeigt werden.</translation>
    </message>
    <message>
        <source>This session has no photos.</source>
        <translation>Dieser Fototermin hat keine Fotos.</translation>
    </message>
    <message>
        <source>Reading the photo…</source>
        <translation>Das Foto wird gelesen…</translation>
    </message>
    <message>
        <source>Drag a mark, or step through the marks with Tab and move one with the arrow keys.</source>
        <translation>Eine Marke ziehen, oder mit Tab von Marke zu Marke gehen und mit den Pfeiltasten verschieben.</translation>
    </message>
    <message>
        <source>Read again today, the photo gives a standard length of %1. Moving a landmark measures it anew.</source>
        <translation>Heute neu gelesen ergibt das Foto eine Standardlänge von %1. Ein Messpunkt, den man verschiebt, misst neu.</translation>
    </message>
    <message>
        <source>None.</source>
        <translation>Keine.</translation>
    </message>
    <message>
        <source>✎  Changed, not accepted yet</source>
        <translation>✎  Geändert, noch nicht angenommen</translation>
    </message>
    <message>
        <source>Photos  ·  %1 to look at</source>
        <translation>Fotos  ·  %1 anzusehen</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>%1 of %2, from the left</source>
        <translation>%1 von %2, von links</translation>
    </message>
    <message>
        <source>not identified</source>
        <translation>nicht erkannt</translation>
    </message>
    <message>
        <source>No session yet. Drop a folder of photos or a camera card here.</source>
        <translation>Noch kein Termin. Einen Ordner mit Fotos oder eine Kamerakarte hierher ziehen.</translation>
    </message>
    <message>
        <source>Photograph again: %1</source>
        <translation>Neu fotografieren: %1</translation>
    </message>
    <message>
        <source>Noted with %1: photograph it again.</source>
        <translation>Bei %1 notiert: neu fotografieren.</translation>
    </message>
</context>
<context>
    <name>ringrule::SettingsDialog</name>
    <message>
        <source>Behind: standard deviations below its tankmates&apos; growth</source>
        <translation>Zurück: Standardabweichungen unter dem Wachstum der Beckengenossen</translation>
    </message>
    <message>
        <source>Behind: least part of the tankmates&apos; growth that matters</source>
        <translation>Zurück: kleinster Anteil am Wachstum der Beckengenossen, der zählt</translation>
    </message>
    <message>
        <source>Thin: standard errors below its own past</source>
        <translation>Dünn: Standardfehler unter der eigenen Vergangenheit</translation>
    </message>
    <message>
        <source>Not feeding: days running on which food was refused</source>
        <translation>Frisst nicht: Tage hintereinander mit verweigertem Futter</translation>
    </message>
    <message>
        <source>Days after a change of food that are not judged</source>
        <translation>Tage nach einer Umstellung, die nicht beurteilt werden</translation>
    </message>
    <message>
        <source>Days for which a finding is told after the last session</source>
        <translation>Tage, die ein Befund nach dem letzten Termin gemeldet bleibt</translation>
    </message>
    <message>
        <source>As the system</source>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
</context>
<context>
    <name>ringrule::TraceTool</name>
    <message>
        <source>Click along the edge from one place of the outline to another, or all round an animal; double click or Enter ends it. Backspace takes a click back, Esc gives up. By keyboard: arrow keys and Space.</source>
        <translation>Am Rand entlang klicken, von einer Stelle des Umrisses zu einer anderen oder ganz um ein Tier; Doppelklick oder Eingabe beendet. Rücktaste nimmt einen Klick zurück, Esc gibt auf. Mit der Tastatur: Pfeiltasten und Leertaste.</translation>
    </message>
</context>
<context>
    <name>ringrule::WaterPanel</name>
    <message>
        <source>acrylic</source>
        <translation>Acryl</translation>
    </message>
    <message>
        <source>glass</source>
        <translation>Glas</translation>
    </message>
    <message>
        <source>another pane, index</source>
        <translation>andere Scheibe, Brechzahl</translation>
    </message>
    <message>
        <source>none: through the water&apos;s surface</source>
        <translation>keine: durch die Wasseroberfläche</translation>
    </message>
    <message>
        <source>Window, water and distances are in the box file.</source>
        <translation>Scheibe, Wasser und Abstände stehen in der Boxdatei.</translation>
    </message>
    <message>
        <source>&amp;Camera to surface</source>
        <translation>&amp;Kamera bis Oberfläche</translation>
    </message>
    <message>
        <source>&amp;Camera to window</source>
        <translation>&amp;Kamera bis Scheibe</translation>
    </message>
    <message>
        <source>W&amp;ater, surface to plate</source>
        <translation>&amp;Wasser, Oberfläche bis Platte</translation>
    </message>
    <message>
        <source>W&amp;ater, window to plate</source>
        <translation>&amp;Wasser, Scheibe bis Platte</translation>
    </message>
    <message>
        <source>Such water bends light with an index of %1 (Quan &amp; Fry 1995).%2</source>
        <translation>Solches Wasser bricht Licht mit der Zahl %1 (Quan &amp; Fry 1995).%2</translation>
    </message>
    <message>
        <source> Both distances are still to be typed in.</source>
        <translation> Beide Abstände sind noch einzugeben.</translation>
    </message>
</context>
</TS>
