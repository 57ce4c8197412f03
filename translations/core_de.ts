<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
    <context>
        <name>core</name>
        <message>
            <source>The box file has no lens: distortion is not corrected and the interval is wider. Calibrate the lens.</source>
            <translation>Die Boxdatei hat kein Objektiv: Die Verzeichnung bleibt, und das Intervall ist weiter. Das Objektiv kalibrieren.</translation>
        </message>
        <message>
            <source>The box file has no media: refraction is not corrected and the interval is wider. Measure the box.</source>
            <translation>Die Boxdatei sagt nichts von Scheibe und Wasser: Die Brechung bleibt, und das Intervall ist weiter. Die Box ausmessen.</translation>
        </message>
        <message>
            <source>The photo has another size than the lens photos, in the same proportion: the lens was scaled to it.</source>
            <translation>Das Foto hat eine andere Größe als die Objektivfotos, im selben Seitenverhältnis: Das Objektiv wurde darauf umgerechnet.</translation>
        </message>
        <message>
            <source>The photo's proportions differ from the lens photos': the lens was not used. Use the same camera setting.</source>
            <translation>Das Seitenverhältnis ist anders als bei den Objektivfotos: Das Objektiv wurde nicht verwendet. Dieselbe Kameraeinstellung nehmen.</translation>
        </message>
        <message>
            <source>The photo is from another camera than the lens photos: the lens was not used. Use that camera, or calibrate the lens of this one.</source>
            <translation>Das Foto ist von einer anderen Kamera als die Objektivfotos: Das Objektiv wurde nicht verwendet. Jene Kamera nehmen oder das Objektiv dieser kalibrieren.</translation>
        </message>
        <message>
            <source>The photo has another focal length than the lens photos: the lens was not used. Set zoom and camera as then.</source>
            <translation>Das Foto hat eine andere Brennweite als die Objektivfotos: Das Objektiv wurde nicht verwendet. Zoom und Kamera wie damals einstellen.</translation>
        </message>
        <message>
            <source>Some of the plate's markers were not found. Uncover and clean the plate.</source>
            <translation>Einige Marker der Platte wurden nicht gefunden. Die Platte freimachen und reinigen.</translation>
        </message>
        <message>
            <source>The camera stood oblique to the plate. Square it up.</source>
            <translation>Die Kamera stand schräg zur Platte. Gerade ausrichten.</translation>
        </message>
        <message>
            <source>The plate stands upside down in the photo. Lengths hold; turn the plate or the camera.</source>
            <translation>Die Platte steht im Foto auf dem Kopf. Die Längen gelten; Platte oder Kamera drehen.</translation>
        </message>
        <message>
            <source>The photo does not say when it was taken. Set the camera's clock.</source>
            <translation>Das Foto sagt nicht, wann es gemacht wurde. Die Uhr der Kamera stellen.</translation>
        </message>
        <message>
            <source>No animal card was found in the photo. Say which animal it is.</source>
            <translation>Im Foto wurde keine Tierkarte gefunden. Angeben, welches Tier es ist.</translation>
        </message>
        <message>
            <source>More than one animal card is in the photo. Say which animal it is.</source>
            <translation>Im Foto ist mehr als eine Tierkarte. Angeben, welches Tier es ist.</translation>
        </message>
        <message>
            <source>More than one animal is in the photo: the card cannot tell whose is whose. Say which is which.</source>
            <translation>Im Foto ist mehr als ein Tier: Die Karte kann nicht sagen, welches welches ist. Angeben, wer wer ist.</translation>
        </message>
        <message>
            <source>The photo is blurred against the animal's size. Focus on the animal and repeat.</source>
            <translation>Das Foto ist für die Größe des Tieres unscharf. Auf das Tier scharfstellen und wiederholen.</translation>
        </message>
        <message>
            <source>The animal is small in the photo: the interval is wide. Move the camera nearer.</source>
            <translation>Das Tier ist klein im Bild: Das Intervall ist weit. Mit der Kamera näher herangehen.</translation>
        </message>
        <message>
            <source>Glare cuts into the animal's outline. Move the light and repeat.</source>
            <translation>Ein Reflex schneidet in den Umriss. Das Licht versetzen und wiederholen.</translation>
        </message>
        <message>
            <source>The photo is too dark or too light. Correct the exposure and repeat.</source>
            <translation>Das Foto ist zu dunkel oder zu hell. Die Belichtung ändern und wiederholen.</translation>
        </message>
        <message>
            <source>The animal reaches the edge of the photo or of the plate. Centre it and repeat.</source>
            <translation>Das Tier reicht an den Rand von Foto oder Platte. In die Mitte nehmen und wiederholen.</translation>
        </message>
        <message>
            <source>The trunk is bent too much for a fair depth. Wait until it straightens.</source>
            <translation>Der Rumpf ist für eine faire Tiefe zu stark gebogen. Warten, bis er sich streckt.</translation>
        </message>
        <message>
            <source>The tail closes on itself and hides length. Wait until it opens by itself; never force it.</source>
            <translation>Der Schwanz schließt sich und verbirgt Länge. Warten, bis er sich von selbst öffnet; nie zwingen.</translation>
        </message>
        <message>
            <source>The tail is curled; its gaps are seen and the length was followed round.</source>
            <translation>Der Schwanz ist eingerollt; seine Lücken sind zu sehen, und die Länge wurde ringsum verfolgt.</translation>
        </message>
        <message>
            <source>The outline does not agree with a body along its midline. Look at the overlay before you believe it.</source>
            <translation>Der Umriss passt nicht zu einem Körper entlang seiner Mittellinie. Erst ansehen, dann glauben.</translation>
        </message>
        <message>
            <source>The animal is nearly as pale as the plate: its outline was seen by colour alone. Look at the overlay before you believe it, or use a dark plate.</source>
            <translation>Das Tier ist fast so hell wie die Platte: Sein Umriss wurde nur an der Farbe erkannt. Erst ansehen, dann glauben, oder eine dunkle Platte nehmen.</translation>
        </message>
        <message>
            <source>Before a dark plate an eye or a fin can spoil the outline. Look at the overlay before you believe it.</source>
            <translation>Vor einer dunklen Platte können ein Auge oder eine Flosse den Umriss verfälschen. Erst ansehen, dann glauben.</translation>
        </message>
        <message>
            <source>Which end is the head is not certain. Check the landmarks.</source>
            <translation>Welches Ende der Kopf ist, ist nicht sicher. Die Messpunkte prüfen.</translation>
        </message>
        <message>
            <source>The base of the caudal fin was not seen clearly: the tail's end is less certain.</source>
            <translation>Der Ansatz der Schwanzflosse war nicht klar zu sehen: Das Schwanzende ist weniger sicher.</translation>
        </message>
        <message>
            <source>Girth uses the shape's usual width, not a second view. Add a photo from above or from the front.</source>
            <translation>Der Umfang nutzt die übliche Breite der Gestalt, keine zweite Ansicht. Ein Foto von oben oder vorn hinzufügen.</translation>
        </message>
        <message>
            <source>Girth uses the width seen in the second view.</source>
            <translation>Der Umfang nutzt die in der zweiten Ansicht gesehene Breite.</translation>
        </message>
        <message>
            <source>Brooding or carrying: this animal is not judged on girth.</source>
            <translation>Trägt Eier oder Junge: Dieses Tier wird nicht nach dem Umfang beurteilt.</translation>
        </message>
        <message>
            <source>A person moved a landmark.</source>
            <translation>Jemand hat einen Messpunkt verschoben.</translation>
        </message>
        <message>
            <source>A person drew, cut or joined a part of the outline.</source>
            <translation>Jemand hat einen Teil des Umrisses gezeichnet, getrennt oder verbunden.</translation>
        </message>
        <message>
            <source>The animal's shape was told from its outline and is not certain.</source>
            <translation>Die Gestalt des Tieres wurde aus dem Umriss geschlossen und ist nicht sicher.</translation>
        </message>
        <message>
            <source>The box did not measure true in the check before or after. Mend it, check it, and measure again.</source>
            <translation>Die Box maß bei der Prüfung davor oder danach nicht richtig. In Ordnung bringen, prüfen und neu messen.</translation>
        </message>
        <message>
            <source>No rod check stands for this measure: the last is too old, or the box file or the camera was changed since. Check it with a rod.</source>
            <translation>Keine Stabprüfung gilt für dieses Maß: Die letzte ist zu lange her, oder Boxdatei oder Kamera wurden seither geändert. Mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>Standard length</source>
            <translation>Standardlänge</translation>
        </message>
        <message>
            <source>Height</source>
            <translation>Höhe</translation>
        </message>
        <message>
            <source>Head length</source>
            <translation>Kopflänge</translation>
        </message>
        <message>
            <source>Trunk length</source>
            <translation>Rumpflänge</translation>
        </message>
        <message>
            <source>Tail length</source>
            <translation>Schwanzlänge</translation>
        </message>
        <message>
            <source>Trunk depth</source>
            <translation>Rumpftiefe</translation>
        </message>
        <message>
            <source>Trunk width</source>
            <translation>Rumpfbreite</translation>
        </message>
        <message>
            <source>Girth</source>
            <translation>Umfang</translation>
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
            <source>Belly hollow</source>
            <translation>Bauch hohl</translation>
        </message>
        <message>
            <source>snout tip</source>
            <translation>Schnauzenspitze</translation>
        </message>
        <message>
            <source>coronet</source>
            <translation>Krönchen</translation>
        </message>
        <message>
            <source>head end</source>
            <translation>Kopfende</translation>
        </message>
        <message>
            <source>trunk end</source>
            <translation>Rumpfende</translation>
        </message>
        <message>
            <source>tail end</source>
            <translation>Schwanzende</translation>
        </message>
        <message>
            <source>side</source>
            <translation>Seite</translation>
        </message>
        <message>
            <source>front</source>
            <translation>vorn</translation>
        </message>
        <message>
            <source>above</source>
            <translation>oben</translation>
        </message>
        <message>
            <source>mirror</source>
            <translation>Spiegel</translation>
        </message>
        <message>
            <source>Print the plate</source>
            <translation>Platte drucken</translation>
        </message>
        <message>
            <source>Steel rule</source>
            <translation>Stahlmaßstab</translation>
        </message>
        <message>
            <source>Lens photos</source>
            <translation>Objektivfotos</translation>
        </message>
        <message>
            <source>Water and window</source>
            <translation>Wasser und Scheibe</translation>
        </message>
        <message>
            <source>Animal's plane</source>
            <translation>Ort des Tieres</translation>
        </message>
        <message>
            <source>Rod check</source>
            <translation>Stabprüfung</translation>
        </message>
        <message>
            <source>behind tankmates</source>
            <translation>hinter den Beckengenossen</translation>
        </message>
        <message>
            <source>stalled</source>
            <translation>wächst nicht mehr</translation>
        </message>
        <message>
            <source>thin</source>
            <translation>dünn</translation>
        </message>
        <message>
            <source>getting thinner</source>
            <translation>wird dünner</translation>
        </message>
        <message>
            <source>measure doubtful</source>
            <translation>Maß zweifelhaft</translation>
        </message>
        <message>
            <source>cannot tell</source>
            <translation>nicht zu sagen</translation>
        </message>
        <message>
            <source>%1: %2 x %3 mm with %4 markers.</source>
            <translation>%1: %2 x %3 mm mit %4 Markern.</translation>
        </message>
        <message>
            <source>So few markers leave no scale when one is hidden: print a plate with four or more.</source>
            <translation>So wenige Marker lassen keinen Maßstab übrig, wenn einer verdeckt ist: Eine Platte mit vier oder mehr drucken.</translation>
        </message>
        <message>
            <source>The box file does not say that the print was measured.</source>
            <translation>Die Boxdatei sagt nicht, dass der Druck gemessen wurde.</translation>
        </message>
        <message>
            <source>Measure the bars beside the plate with a steel rule and type what you read.</source>
            <translation>Die Balken neben der Platte mit einem Stahllineal messen und eintippen, was abzulesen ist.</translation>
        </message>
        <message>
            <source>No photo can show a plate that was printed at 97 %.</source>
            <translation>Kein Foto kann eine Platte zeigen, die mit 97 % gedruckt wurde.</translation>
        </message>
        <message>
            <source>Printed at %1 % across and %2 % down; the box file is corrected for it.</source>
            <translation>Gedruckt mit %1 % quer und %2 % hoch; die Boxdatei ist danach berichtigt.</translation>
        </message>
        <message>
            <source>Measured on %1.</source>
            <translation>Gemessen am %1.</translation>
        </message>
        <message>
            <source>That was %1 days ago. Heat and damp stretch paper: measure the plate again.</source>
            <translation>Das ist %1 Tage her. Wärme und Feuchte dehnen Papier: Die Platte wieder messen.</translation>
        </message>
        <message>
            <source>A lens of %1 px focal length for photos of %2 x %3 pixels is in the box file.</source>
            <translation>Ein Objektiv mit %1 px Brennweite für Fotos von %2 x %3 Pixeln steht in der Boxdatei.</translation>
        </message>
        <message>
            <source>Camera: %1.</source>
            <translation>Kamera: %1.</translation>
        </message>
        <message>
            <source>Calibrated on %1.</source>
            <translation>Kalibriert am %1.</translation>
        </message>
        <message>
            <source>Corners lie within %1 px of the fit.</source>
            <translation>Die Ecken liegen auf %1 px am Ausgleich.</translation>
        </message>
        <message>
            <source>The focal length is known to %1 %.</source>
            <translation>Die Brennweite ist auf %1 % bekannt.</translation>
        </message>
        <message>
            <source>The file names neither camera nor day.</source>
            <translation>Die Datei nennt weder Kamera noch Tag.</translation>
        </message>
        <message>
            <source>The box file has no lens: every interval is wider than need be.</source>
            <translation>Die Boxdatei hat kein Objektiv: Jedes Intervall ist weiter als nötig.</translation>
        </message>
        <message>
            <source>Photograph the plate or a chessboard in air ten to fifteen times, tilted another way in each and brought into every corner, with the focus and zoom of the sessions.</source>
            <translation>Platte oder Schachbrett zehn- bis fünfzehnmal in Luft fotografieren, jedes Mal anders gekippt und in jede Ecke gebracht, mit Schärfe und Zoom der Sitzungen.</translation>
        </message>
        <message>
            <source>The focal length is not told well enough: tilt the board by 20 to 40 degrees and retake.</source>
            <translation>Die Brennweite ist nicht gut genug bestimmt: Das Brett um 20 bis 40 Grad kippen und neu aufnehmen.</translation>
        </message>
        <message>
            <source>How surely it is known the box file does not say: a new calibration would add that.</source>
            <translation>Wie sicher es bekannt ist, sagt die Boxdatei nicht: Eine neue Kalibrierung würde das ergänzen.</translation>
        </message>
        <message>
            <source>Camera %1 mm before a window of %2 mm (index %3), then %4 mm of water of index %5.</source>
            <translation>Kamera %1 mm vor einer Scheibe von %2 mm (Brechzahl %3), dann %4 mm Wasser der Brechzahl %5.</translation>
        </message>
        <message>
            <source>Camera %1 mm before the water's surface, then %2 mm of water of index %3.</source>
            <translation>Kamera %1 mm vor der Wasseroberfläche, dann %2 mm Wasser der Brechzahl %3.</translation>
        </message>
        <message>
            <source>The box file says nothing of window and water.</source>
            <translation>Die Boxdatei sagt nichts von Scheibe und Wasser.</translation>
        </message>
        <message>
            <source>Measure camera to window, the window's thickness and window to plate, and give them with salinity and temperature.</source>
            <translation>Kamera bis Scheibe, Dicke der Scheibe und Scheibe bis Platte messen und mit Salzgehalt und Temperatur angeben.</translation>
        </message>
        <message>
            <source>No pane has such an index: acrylic has about 1.49, glass about 1.52.</source>
            <translation>Keine Scheibe hat eine solche Brechzahl: Acryl hat etwa 1,49, Glas etwa 1,52.</translation>
        </message>
        <message>
            <source>No photo has confirmed the distance yet.</source>
            <translation>Noch hat kein Foto den Abstand bestätigt.</translation>
        </message>
        <message>
            <source>The animal's middle is %1 ± %2 mm before the plate.</source>
            <translation>Die Mitte des Tieres ist %1 ± %2 mm vor der Platte.</translation>
        </message>
        <message>
            <source>No animal lies in the plate: measure from the plate's face to the middle of its body.</source>
            <translation>Kein Tier liegt in der Platte: Von der Plattenfläche bis zur Mitte des Körpers messen.</translation>
        </message>
        <message>
            <source>No animal keeps its place exactly: state how much room it has, half of it each way.</source>
            <translation>Kein Tier hält seinen Platz genau: Angeben, wie viel Raum es hat, die Hälfte nach jeder Seite.</translation>
        </message>
        <message>
            <source>That is as wide as a guess: measure from the plate's face to the middle of the animal's body, and the room it has.</source>
            <translation>Das ist so weit wie geraten: Von der Plattenfläche bis zur Mitte des Tieres messen, und den Raum, den es hat.</translation>
        </message>
        <message>
            <source>That leaves every length open by %1 %.</source>
            <translation>Das lässt jede Länge um %1 % offen.</translation>
        </message>
        <message>
            <source>The box was never checked.</source>
            <translation>Die Box wurde noch nie geprüft.</translation>
        </message>
        <message>
            <source>The last check failed.</source>
            <translation>Die letzte Prüfung schlug fehl.</translation>
        </message>
        <message>
            <source>Hang a dark straight rod of known length where the animals hang, and photograph it.</source>
            <translation>Einen dunklen geraden Stab bekannter Länge dorthin hängen, wo die Tiere hängen, und fotografieren.</translation>
        </message>
        <message>
            <source>There is no box file yet.</source>
            <translation>Es gibt noch keine Boxdatei.</translation>
        </message>
        <message>
            <source>Make a plate that leaves room around the animal, and print it at 100 %.</source>
            <translation>Eine Platte machen, die um das Tier Raum lässt, und mit 100 % drucken.</translation>
        </message>
        <message>
            <source>The plate comes first.</source>
            <translation>Zuerst kommt die Platte.</translation>
        </message>
        <message>
            <source>The box did not measure true at its last check, and its file was changed since. Check it with a rod.</source>
            <translation>Die Box maß bei der letzten Prüfung nicht richtig, und ihre Datei wurde seither geändert. Mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>The box did not measure true when it was checked on %1. %2</source>
            <translation>Die Box maß nicht richtig, als sie am %1 geprüft wurde. %2</translation>
        </message>
        <message>
            <source>The box did not measure true at its next check, on %1, and may have been off before. %2</source>
            <translation>Die Box maß bei der nächsten Prüfung, am %1, nicht richtig und war vielleicht schon vorher verstellt. %2</translation>
        </message>
        <message>
            <source>This box was not checked by then. Photograph a rod of known length where the animals hang.</source>
            <translation>Diese Box war bis dahin nicht geprüft. Einen Stab bekannter Länge fotografieren, wo die Tiere hängen.</translation>
        </message>
        <message>
            <source>Only the plate was checked: whether lengths are true only a rod of known length can tell.</source>
            <translation>Nur die Platte wurde geprüft: Ob Längen stimmen, sagt nur ein Stab bekannter Länge.</translation>
        </message>
        <message>
            <source>The box file was changed since its last rod check. Check it with a rod.</source>
            <translation>Die Boxdatei wurde seit der letzten Stabprüfung geändert. Mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>Another camera, or another of its lenses, than at the last rod check. Check it with a rod.</source>
            <translation>Eine andere Kamera oder ein anderes ihrer Objektive als bei der letzten Stabprüfung. Mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>The last rod check was %1 days before. Check it with a rod each month.</source>
            <translation>Die letzte Stabprüfung war %1 Tage vorher. Jeden Monat mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>A rod of known length read true the same day.</source>
            <translation>Ein Stab bekannter Länge maß am selben Tag richtig.</translation>
        </message>
        <message>
            <source>A rod of known length read true the day before.</source>
            <translation>Ein Stab bekannter Länge maß am Tag davor richtig.</translation>
        </message>
        <message>
            <source>A rod of known length read true %1 days before.</source>
            <translation>Ein Stab bekannter Länge maß %1 Tage vorher richtig.</translation>
        </message>
        <message>
            <source>Lay the photos beside earlier ones of both animals. If it is so, give them to the right animal; if not, photograph both again within the week.</source>
            <translation>Die Fotos neben frühere beider Tiere legen. Trifft es zu, die Fotos dem richtigen Tier geben; sonst beide innerhalb der Woche noch einmal fotografieren.</translation>
        </message>
        <message>
            <source>Look at food, its enrichment and how much each gets, at temperature and salinity, and at how many share the tank. If they also thin, refuse food or are listless, call the veterinarian.</source>
            <translation>Auf Futter, seine Anreicherung und die Menge je Tier achten, auf Temperatur und Salzgehalt und darauf, wie viele sich das Becken teilen. Werden sie auch dünner, verweigern Futter oder sind matt, den Tierarzt rufen.</translation>
        </message>
        <message>
            <source>colder water than in the published rearing, or other food, light and density</source>
            <translation>kälteres Wasser als bei der veröffentlichten Aufzucht oder anderes Futter, Licht und andere Dichte</translation>
        </message>
        <message>
            <source>a hatch date that is not right</source>
            <translation>ein Schlupfdatum, das nicht stimmt</translation>
        </message>
        <message>
            <source>a stock that grows otherwise than the published one</source>
            <translation>ein Bestand, der anders wächst als der veröffentlichte</translation>
        </message>
        <message>
            <source>lengths measured in another way than the published ones</source>
            <translation>Längen, die anders gemessen sind als die veröffentlichten</translation>
        </message>
        <message>
            <source>another box, scale or light in the last two sessions</source>
            <translation>andere Box, anderer Maßstab oder anderes Licht in den letzten zwei Sitzungen</translation>
        </message>
        <message>
            <source>broods or eggs that passed meanwhile</source>
            <translation>Bruten oder Eier, die inzwischen abgegeben wurden</translation>
        </message>
        <message>
            <source>colder or staler water, a treatment, a move</source>
            <translation>kälteres oder älteres Wasser, eine Behandlung, ein Umzug</translation>
        </message>
        <message>
            <source>growth that changes shape, where young ones grow up together</source>
            <translation>Wachstum, das die Form ändert, wo Jungtiere zusammen groß werden</translation>
        </message>
        <message>
            <source>Check the box and photograph a few of them again; look at food, its enrichment and how much each gets, and at temperature and salinity. If it stays, or any is listless, call the veterinarian.</source>
            <translation>Die Box prüfen und einige Tiere noch einmal fotografieren; auf Futter, seine Anreicherung und die Menge je Tier achten, auf Temperatur und Salzgehalt. Bleibt es so oder ist eines matt, den Tierarzt rufen.</translation>
        </message>
        <message>
            <source>Correct the record, or take it out.</source>
            <translation>Den Eintrag berichtigen oder herausnehmen.</translation>
        </message>
        <message>
            <source>a slip of the pen</source>
            <translation>ein Schreibfehler</translation>
        </message>
        <message>
            <source>Look at the photo's outline, landmarks and card; photograph the animal again within the week.</source>
            <translation>Umriss, Marken und Karte im Foto ansehen; das Tier innerhalb der Woche noch einmal fotografieren.</translation>
        </message>
        <message>
            <source>Look at the photos and cards of this session and the last; photograph the animal again within the week.</source>
            <translation>Fotos und Karten dieser und der letzten Sitzung ansehen; das Tier innerhalb der Woche noch einmal fotografieren.</translation>
        </message>
        <message>
            <source>Look for it, and photograph it before the next session.</source>
            <translation>Es suchen und vor der nächsten Sitzung fotografieren.</translation>
        </message>
        <message>
            <source>Photograph it again at the next session.</source>
            <translation>In der nächsten Sitzung wieder fotografieren.</translation>
        </message>
        <message>
            <source>Photograph it and its tankmates again at the next session.</source>
            <translation>Es und seine Beckengenossen in der nächsten Sitzung wieder fotografieren.</translation>
        </message>
        <message>
            <source>Photograph it again with its tail open.</source>
            <translation>Mit offenem Schwanz noch einmal fotografieren.</translation>
        </message>
        <message>
            <source>Judge again when the state has ended.</source>
            <translation>Wieder beurteilen, wenn der Zustand vorbei ist.</translation>
        </message>
        <message>
            <source>Look at its latest photos for a bent body or closed tail and measure it again; watch whether it gets its share at the feeds; offer another food or feed it apart. If it also thins or refuses food, call the veterinarian.</source>
            <translation>Die letzten Fotos auf gebogenen Körper oder geschlossenen Schwanz ansehen und noch einmal messen; beobachten, ob es beim Füttern seinen Teil bekommt; anderes Futter anbieten oder getrennt füttern. Wird es auch dünner oder verweigert Futter: den Tierarzt rufen.</translation>
        </message>
        <message>
            <source>Photograph it again within the week, side on and from above; watch whether it takes food at the next feeds; offer another food. If it stays thin, refuses food or is listless, call the veterinarian.</source>
            <translation>Innerhalb der Woche noch einmal fotografieren, von der Seite und von oben; beobachten, ob es bei den nächsten Fütterungen frisst; anderes Futter anbieten. Bleibt es dünn, verweigert Futter oder ist teilnahmslos: den Tierarzt rufen.</translation>
        </message>
        <message>
            <source>a wrong animal card</source>
            <translation>eine falsche Tierkarte</translation>
        </message>
        <message>
            <source>the body bent or turned toward the camera</source>
            <translation>der Körper gebogen oder zur Kamera gedreht</translation>
        </message>
        <message>
            <source>a closed tail that hides length</source>
            <translation>ein geschlossener Schwanz, der Länge verbirgt</translation>
        </message>
        <message>
            <source>a landmark in the wrong place</source>
            <translation>eine Marke am falschen Ort</translation>
        </message>
        <message>
            <source>shadow or a fin taken for body</source>
            <translation>Schatten oder Flosse für Körper gehalten</translation>
        </message>
        <message>
            <source>a brood, eggs or a full gut that is not on record</source>
            <translation>Brut, Eier oder ein voller Darm, die nicht notiert sind</translation>
        </message>
        <message>
            <source>the animal seen from above rather than from the side</source>
            <translation>das Tier von oben statt von der Seite gesehen</translation>
        </message>
        <message>
            <source>the last session's length was too short (bent body, closed tail)</source>
            <translation>die Länge der letzten Sitzung war zu kurz (gebogener Körper, geschlossener Schwanz)</translation>
        </message>
        <message>
            <source>something joined to the tail in the outline</source>
            <translation>etwas im Umriss mit dem Schwanz verbunden</translation>
        </message>
        <message>
            <source>a bent body or closed tail in the latest photos</source>
            <translation>gebogener Körper oder geschlossener Schwanz in den letzten Fotos</translation>
        </message>
        <message>
            <source>a wrong animal card in this session or an earlier one</source>
            <translation>eine falsche Tierkarte in dieser oder einer früheren Sitzung</translation>
        </message>
        <message>
            <source>growth slows at maturity, in some animals sooner than in others</source>
            <translation>mit der Reife wird das Wachstum langsamer, bei manchen Tieren früher</translation>
        </message>
        <message>
            <source>a female that has just passed her eggs looks pinched for a while</source>
            <translation>ein Weibchen, das eben seine Eier abgegeben hat, sieht eine Weile eingefallen aus</translation>
        </message>
        <message>
            <source>before this a brood, eggs or a full gut that was not on record</source>
            <translation>vorher Brut, Eier oder ein voller Darm, die nicht notiert waren</translation>
        </message>
        <message>
            <source>no standard length this session: its last known length was used</source>
            <translation>keine Standardlänge in dieser Sitzung: die letzte bekannte wurde genommen</translation>
        </message>
        <message>
            <source>growth in length</source>
            <translation>Längenwachstum</translation>
        </message>
        <message>
            <source>growth rate</source>
            <translation>Wachstumsrate</translation>
        </message>
        <message>
            <source>condition index</source>
            <translation>Konditionsindex</translation>
        </message>
        <message>
            <source>condition index by trunk width</source>
            <translation>Konditionsindex nach Rumpfbreite</translation>
        </message>
        <message>
            <source>trunk depth for length</source>
            <translation>Rumpftiefe für die Länge</translation>
        </message>
        <message>
            <source>standard length</source>
            <translation>Standardlänge</translation>
        </message>
        <message>
            <source>not feeding</source>
            <translation>frisst nicht</translation>
        </message>
        <message>
            <source>condition index of the tank, against its own past</source>
            <translation>Konditionsindex des Beckens</translation>
        </message>
        <message>
            <source>growth of the tank, against published growth</source>
            <translation>Wachstum des Beckens</translation>
        </message>
        <message>
            <source>days without food taken</source>
            <translation>Tage ohne gefressenes Futter</translation>
        </message>
        <message>
            <source>it ate what nobody saw, between the noted feeds</source>
            <translation>es fraß zwischen den notierten Fütterungen, was niemand sah</translation>
        </message>
        <message>
            <source>a new food that it does not know yet</source>
            <translation>ein neues Futter, das es noch nicht kennt</translation>
        </message>
        <message>
            <source>Offer a food that it took before, live if need be, and watch it alone at the feed; look at water and tankmates. If it refuses for another day or is listless, call the veterinarian.</source>
            <translation>Ein Futter anbieten, das es früher nahm, notfalls lebendes, und es beim Füttern allein beobachten; auf Wasser und Beckengenossen achten. Verweigert es einen weiteren Tag oder ist es matt, den Tierarzt rufen.</translation>
        </message>
        <message>
            <source>tank low</source>
            <translation>Becken unter dem Üblichen</translation>
        </message>
        <message>
            <source>Age (days)</source>
            <translation>Alter (Tage)</translation>
        </message>
        <message>
            <source>Date of session</source>
            <translation>Tag des Termins</translation>
        </message>
        <message>
            <source>Standard length (mm)</source>
            <translation>Standardlänge (mm)</translation>
        </message>
        <message>
            <source>Trunk depth ÷ standard length</source>
            <translation>Rumpftiefe ÷ Standardlänge</translation>
        </message>
        <message>
            <source>Girth ÷ standard length</source>
            <translation>Umfang ÷ Standardlänge</translation>
        </message>
        <message>
            <source>Trunk width ÷ standard length</source>
            <translation>Rumpfbreite ÷ Standardlänge</translation>
        </message>
        <message>
            <source>Bars: 95 % interval of the measure.</source>
            <translation>Balken: 95-%-Intervall des Maßes.</translation>
        </message>
        <message>
            <source>Shaded: median of the animals not picked out, and one robust standard deviation to either side.</source>
            <translation>Grau: Median der nicht hervorgehobenen Tiere und eine robuste Standardabweichung zu jeder Seite.</translation>
        </message>
        <message>
            <source>Hollow: brooding or carrying, not judged on girth.</source>
            <translation>Hohl: trägt oder brütet, nicht nach Umfang beurteilt.</translation>
        </message>
        <message>
            <source>Full line: the group's curve; between the dotted lines 95 % of animals like these.</source>
            <translation>Durchgezogen: Kurve der Gruppe; zwischen den punktierten Linien liegen 95 % solcher Tiere.</translation>
        </message>
        <message>
            <source>No animal has this measure yet.</source>
            <translation>Noch kein Tier hat dieses Maß.</translation>
        </message>
        <message>
            <source>Jan</source>
            <translation>Jan</translation>
        </message>
        <message>
            <source>Feb</source>
            <translation>Feb</translation>
        </message>
        <message>
            <source>Mar</source>
            <translation>Mär</translation>
        </message>
        <message>
            <source>Apr</source>
            <translation>Apr</translation>
        </message>
        <message>
            <source>May</source>
            <translation>Mai</translation>
        </message>
        <message>
            <source>Jun</source>
            <translation>Jun</translation>
        </message>
        <message>
            <source>Jul</source>
            <translation>Jul</translation>
        </message>
        <message>
            <source>Aug</source>
            <translation>Aug</translation>
        </message>
        <message>
            <source>Sep</source>
            <translation>Sep</translation>
        </message>
        <message>
            <source>Oct</source>
            <translation>Okt</translation>
        </message>
        <message>
            <source>Nov</source>
            <translation>Nov</translation>
        </message>
        <message>
            <source>Dec</source>
            <translation>Dez</translation>
        </message>
        <message>
            <source>no-plate</source>
            <translation>Im Foto wurde keine Maßplatte gefunden. Die Platte hinter das Tier stellen, scharf und gleichmäßig beleuchtet.</translation>
        </message>
        <message>
            <source>too-few-markers</source>
            <translation>Zu wenige Marken der Platte sind zu sehen. Die Platte freilegen und reinigen.</translation>
        </message>
        <message>
            <source>plate-mirrored</source>
            <translation>Die Platte ist gespiegelt zu sehen: durch einen Spiegel, von hinten oder mit einer Kamera, die spiegelt. Gerade darauf fotografieren.</translation>
        </message>
        <message>
            <source>plate-other-markers</source>
            <translation>Das Foto zeigt Marken einer anderen Art als die Boxdatei. Die Boxdatei dieser Platte wählen.</translation>
        </message>
        <message>
            <source>two-plates</source>
            <translation>Zwei Maßplatten sind im Foto. Nur eine stehen lassen, oder wegnehmen, was sie spiegelt.</translation>
        </message>
        <message>
            <source>plate-mismatch</source>
            <translation>Die Marken im Foto liegen nicht, wo die Boxdatei sagt. Die Boxdatei dieser Platte wählen.</translation>
        </message>
        <message>
            <source>scale-not-determined</source>
            <translation>Die Marken der Platte passen nicht zu Boxdatei und Objektiv. Die Boxdatei mit der Box vergleichen.</translation>
        </message>
        <message>
            <source>no-rod</source>
            <translation>Vor der Platte wurde kein dunkler gerader Stab gefunden. Ihn allein in die Ebene des Tiers hängen, weg von den Marken.</translation>
        </message>
        <message>
            <source>too-few-lens-photos</source>
            <translation>Zu wenige brauchbare Fotos zeigen die Tafel in eigener Lage: mindestens fünf braucht es, zehn sind gut.</translation>
        </message>
        <message>
            <source>poor-coverage</source>
            <translation>Die Tafel war in zu wenig des Bildes zu sehen. Weitere Fotos mit ihr in den Ecken und an den Rändern machen.</translation>
        </message>
        <message>
            <source>poor-angles</source>
            <translation>Die Fotos trennen Brennweite und Abstand nicht. Die Tafel um 20 bis 40 Grad neigen, jedes Mal anders.</translation>
        </message>
        <message>
            <source>lens-not-determined</source>
            <translation>Kein Objektiv passt zu diesen Fotos. Prüfen, ob die Tafel eben und die genannte ist, und sie neu aufnehmen.</translation>
        </message>
        <message>
            <source>no-animal</source>
            <translation>Vor der Platte wurde kein Tier gefunden. Prüfen, ob es davor hängt.</translation>
        </message>
        <message>
            <source>cannot-separate</source>
            <translation>Das Tier hebt sich nicht von der Platte ab. Das Licht verbessern und wiederholen.</translation>
        </message>
        <message>
            <source>empty-box-unclear</source>
            <translation>Im Foto der leeren Box ist die Platte nicht zu erkennen. Es im Licht des Termins aufnehmen, mit der ganzen Platte darin.</translation>
        </message>
        <message>
            <source>no-midline</source>
            <translation>Was gefunden wurde, hat keine lange Achse: Es ist kein Tier von der Seite, oder nur das Auge eines, das so hell ist wie die Platte. Für solche eine dunkle Platte nehmen.</translation>
        </message>
        <message>
            <source>shape-not-clear</source>
            <translation>Was gefunden wurde, ist zu gedrungen für einen langen Fisch. Prüfen, ob das Tier mit der Seite zur Kamera liegt.</translation>
        </message>
        <message>
            <source>tail-closed</source>
            <translation>Der Schwanz schließt sich und verdeckt Länge. Warten, bis er sich von selbst öffnet.</translation>
        </message>
        <message>
            <source>cut-off</source>
            <translation>Das Tier reicht an den Rand des Fotos oder der Platte. Es in die Mitte bringen und wiederholen.</translation>
        </message>
        <message>
            <source>not-one-body</source>
            <translation>Der Umriss ist nicht ein Körper: Tiere kreuzen oder berühren sich, oder etwas hängt an einem. Sie trennen und wiederholen.</translation>
        </message>
        <message>
            <source>trace-not-closed</source>
            <translation>Die Klicks führen nicht um ein Tier. Der Reihe nach am ganzen Rand klicken und enden, wo begonnen wurde.</translation>
        </message>
        <message>
            <source>outline-crosses</source>
            <translation>Der Umriss würde sich selbst kreuzen. Rückgängig machen und das Stück nur auf einer Seite ziehen.</translation>
        </message>
        <message>
            <source>cut-misses</source>
            <translation>Die Linie teilt das Tier nicht. Sie ganz hindurch ziehen, von Platte zu Platte.</translation>
        </message>
        <message>
            <source>join-too-far</source>
            <translation>Diese zwei Teile können nicht ein Tier sein: Sie liegen zu weit auseinander oder übereinander.</translation>
        </message>
        <message>
            <source>landmarks-missing</source>
            <translation>Die Marken des Hauptmaßes wurden nicht gefunden. Sie von Hand setzen.</translation>
        </message>
        <message>
            <source>no-length</source>
            <translation>Eine Länge fehlt oder ist nicht über null; diesen Termin berichtigen oder weglassen.</translation>
        </message>
        <message>
            <source>no-time</source>
            <translation>Die Termine liegen nicht in zeitlicher Reihenfolge oder an einem Tag; ein Wachstum braucht Tage dazwischen.</translation>
        </message>
        <message>
            <source>too-few-points</source>
            <translation>Es gibt zu wenige Maße dafür; weitere Termine machen.</translation>
        </message>
        <message>
            <source>too-few-ages</source>
            <translation>Es gibt zu wenige verschiedene Alter für eine Wachstumskurve; weitere Termine machen.</translation>
        </message>
        <message>
            <source>not-identified</source>
            <translation>Die Daten reichen nicht, um die Kurve festzulegen; weitere Termine oder Tiere.</translation>
        </message>
        <message>
            <source>no-repeats</source>
            <translation>Kein Tier wurde oft genug gesehen, um sein Wachstum von der Streuung zu trennen; weitere Termine machen.</translation>
        </message>
        <message>
            <source>no-scatter</source>
            <translation>Die Längen folgen dem Modell genau; echte streuen. Die Daten prüfen.</translation>
        </message>
        <message>
            <source>dates-reversed</source>
            <translation>Die Termine eines Tiers liegen nicht in zeitlicher Reihenfolge, oder sein Alter nimmt ab; die Tage berichtigen.</translation>
        </message>
        <message>
            <source>animal-in-two-tanks</source>
            <translation>Ein Tier steht zugleich in zwei Becken; seine Aufenthalte berichtigen.</translation>
        </message>
        <message>
            <source>animal-on-two-diets</source>
            <translation>Ein Tier steht zugleich auf zwei Futterplänen; sein Futter berichtigen.</translation>
        </message>
        <message>
            <source>too-few-animals</source>
            <translation>Dafür braucht es mehr Tiere mit bekanntem Alter und bekannter Länge.</translation>
        </message>
        <message>
            <source>too-few-groups</source>
            <translation>Weniger als zwei Futter wurden in dieser Zeit durchgehend von Tieren mit zwei Längen gefressen.</translation>
        </message>
        <message>
            <source>too-few-sessions</source>
            <translation>Es gibt zu wenige Termine, um damit zu vergleichen.</translation>
        </message>
        <message>
            <source>no-change-of-food</source>
            <translation>Für dieses Tier ist keine Umstellung des Futters verzeichnet.</translation>
        </message>
        <message>
            <source>no-fit</source>
            <translation>Keine Kurve dieser Art passt zu den Maßen; nach einem falschen Wert suchen.</translation>
        </message>
        <message>
            <source>before-first</source>
            <translation>Der Tag liegt vor dem ersten Termin; einen späteren nehmen.</translation>
        </message>
        <message>
            <source>too-far-ahead</source>
            <translation>So weit voraus lässt sich nichts sagen.</translation>
        </message>
        <message>
            <source>not-reached</source>
            <translation>Diese Länge wird nach den bisherigen Maßen nicht erreicht.</translation>
        </message>
        <message>
            <source>markers-missing</source>
            <translation>Marken der Platte fehlen im Foto. Sie freilegen und reinigen.</translation>
        </message>
        <message>
            <source>marker-off</source>
            <translation>Eine Marke liegt anders, als die übrigen sagen. Die Platte ansehen: Ist sie dort wellig, verschmutzt oder verdeckt?</translation>
        </message>
        <message>
            <source>plate-uneven</source>
            <translation>Die Ecken der Marken streuen: Die Platte ist gebogen, der Druck ungleich oder das Objektiv ein anderes.</translation>
        </message>
        <message>
            <source>plate-tilted</source>
            <translation>Die Kamera stand schräg zur Platte. Sie gerade ausrichten.</translation>
        </message>
        <message>
            <source>plate-upside-down</source>
            <translation>Die Platte steht im Foto auf dem Kopf. Längen stimmen; Platte oder Kamera drehen.</translation>
        </message>
        <message>
            <source>distance-off</source>
            <translation>Die Platte sieht aus wie aus einem anderen Abstand, als die Boxdatei sagt. Von der Kamera zur Scheibe messen und eintragen.</translation>
        </message>
        <message>
            <source>not-this-camera</source>
            <translation>Das Objektiv in der Boxdatei gehört nicht zu dieser Kamera oder Einstellung, oder es ist keines da. Es einmessen.</translation>
        </message>
        <message>
            <source>length-off</source>
            <translation>Ein Stab bekannter Länge wird falsch gelesen. Box nicht verwenden, bis die Ursache gefunden ist.</translation>
        </message>
        <message>
            <source>Fewer than two diets were kept throughout this time by animals that stayed in one tank.</source>
            <translation>Weniger als zwei Futter wurden in dieser Zeit durchgehend von Tieren gefressen, die in einem Becken blieben.</translation>
        </message>
        <message>
            <source>No animal on one of the diets has lengths on two days; add sessions.</source>
            <translation>Mit einem der Futter hat kein Tier Längen an zwei Tagen; weitere Termine machen.</translation>
        </message>
        <message>
            <source>There are too few lengths to compare diets; add animals or sessions.</source>
            <translation>Für einen Vergleich der Futter gibt es zu wenige Längen; weitere Tiere oder Termine hinzunehmen.</translation>
        </message>
        <message>
            <source>There are too few animals or lengths for a model of the group; add animals.</source>
            <translation>Für ein Modell der Gruppe gibt es zu wenige Tiere oder Längen; weitere Tiere hinzunehmen.</translation>
        </message>
        <message>
            <source>Animals with a length on one day only were left out: they tell no growth.</source>
            <translation>Tiere mit einer Länge an nur einem Tag wurden weggelassen: Sie zeigen kein Wachstum.</translation>
        </message>
        <message>
            <source>Whole tanks were fed: tanks, not animals, are compared, and any other difference between the tanks looks like an effect of food.</source>
            <translation>Ganze Becken bekamen das Futter: Verglichen werden Becken, nicht Tiere, und jeder andere Unterschied zwischen den Becken sieht aus wie eine Wirkung des Futters.</translation>
        </message>
        <message>
            <source>Tanks held the diets too unevenly to tell food from tank: a difference between tanks may look like one of food.</source>
            <translation>Das Futter war zu ungleich auf die Becken verteilt, um Futter und Becken zu trennen: Ein Unterschied zwischen Becken kann wie einer des Futters aussehen.</translation>
        </message>
        <message>
            <source>The model found no spread of growth between animals, so that intervals rest on each animal's own growth.</source>
            <translation>Das Modell fand keine Streuung des Wachstums zwischen Tieren; die Intervalle beruhen daher auf dem eigenen Wachstum jedes Tiers.</translation>
        </message>
        <message>
            <source>Each diet had tanks of its own: tanks, not animals, are then the unit of comparison, and any other difference between the tanks looks like an effect of food.</source>
            <translation>Jedes Futter hatte eigene Becken: Dann sind Becken und nicht Tiere die Einheit des Vergleichs, und jeder andere Unterschied zwischen den Becken sieht aus wie eine Wirkung des Futters.</translation>
        </message>
        <message>
            <source>A diet with fewer than three animals is shown, not tested.</source>
            <translation>Ein Futter mit weniger als drei Tieren wird gezeigt, nicht geprüft.</translation>
        </message>
        <message>
            <source>Tanks</source>
            <translation>Becken</translation>
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
            <source>Animals</source>
            <translation>Tiere</translation>
        </message>
        <message>
            <source>Who was in which tank</source>
            <translation>Welches Tier in welchem Becken war</translation>
        </message>
        <message>
            <source>Which animal had which diet</source>
            <translation>Welches Tier welches Futter bekam</translation>
        </message>
        <message>
            <source>Notes</source>
            <translation>Notizen</translation>
        </message>
        <message>
            <source>Food offered, taken or refused</source>
            <translation>Futter angeboten, gefressen oder verweigert</translation>
        </message>
        <message>
            <source>Water readings</source>
            <translation>Wasserwerte</translation>
        </message>
        <message>
            <source>Treatments</source>
            <translation>Behandlungen</translation>
        </message>
        <message>
            <source>Measures taken by hand</source>
            <translation>Von Hand genommene Maße</translation>
        </message>
        <message>
            <source>First day</source>
            <translation>Erster Tag</translation>
        </message>
        <message>
            <source>Last day; empty while it goes on</source>
            <translation>Letzter Tag; leer, solange es andauert</translation>
        </message>
        <message>
            <source>The keeper's own code</source>
            <translation>Eigenes Kürzel</translation>
        </message>
        <message>
            <source>Name</source>
            <translation>Name</translation>
        </message>
        <message>
            <source>Scientific name</source>
            <translation>Wissenschaftlicher Name</translation>
        </message>
        <message>
            <source>Body plan that measuring uses</source>
            <translation>Körperform, nach der gemessen wird</translation>
        </message>
        <message>
            <source>Sex</source>
            <translation>Geschlecht</translation>
        </message>
        <message>
            <source>How the sex was told</source>
            <translation>Woran das Geschlecht erkannt wurde</translation>
        </message>
        <message>
            <source>Day of hatching or birth</source>
            <translation>Tag des Schlüpfens oder der Geburt</translation>
        </message>
        <message>
            <source>Whether that day is exact; else it is an estimate</source>
            <translation>Ob dieser Tag genau ist; sonst geschätzt</translation>
        </message>
        <message>
            <source>Standard deviation of an estimated day</source>
            <translation>Standardabweichung eines geschätzten Tags</translation>
        </message>
        <message>
            <source>Day of arrival</source>
            <translation>Tag der Ankunft</translation>
        </message>
        <message>
            <source>Where it comes from</source>
            <translation>Woher es kommt</translation>
        </message>
        <message>
            <source>Mother</source>
            <translation>Mutter</translation>
        </message>
        <message>
            <source>Father</source>
            <translation>Vater</translation>
        </message>
        <message>
            <source>Brood it is of</source>
            <translation>Brut, aus der es ist</translation>
        </message>
        <message>
            <source>Number on its animal card</source>
            <translation>Nummer auf seiner Tierkarte</translation>
        </message>
        <message>
            <source>Day on which it died or left</source>
            <translation>Tag, an dem es starb oder ging</translation>
        </message>
        <message>
            <source>Whether it died or left</source>
            <translation>Ob es starb oder ging</translation>
        </message>
        <message>
            <source>Code</source>
            <translation>Kürzel</translation>
        </message>
        <message>
            <source>Foods, a JSON list of texts</source>
            <translation>Futtermittel</translation>
        </message>
        <message>
            <source>Feeds a day</source>
            <translation>Fütterungen am Tag</translation>
        </message>
        <message>
            <source>What the food is enriched with</source>
            <translation>Womit das Futter angereichert ist</translation>
        </message>
        <message>
            <source>Animal</source>
            <translation>Tier</translation>
        </message>
        <message>
            <source>Tank</source>
            <translation>Becken</translation>
        </message>
        <message>
            <source>Diet</source>
            <translation>Futter</translation>
        </message>
        <message>
            <source>State, e.g. brooding</source>
            <translation>Zustand, z. B. brütet</translation>
        </message>
        <message>
            <source>Day</source>
            <translation>Tag</translation>
        </message>
        <message>
            <source>Text</source>
            <translation>Text</translation>
        </message>
        <message>
            <source>Food</source>
            <translation>Futtermittel</translation>
        </message>
        <message>
            <source>What became of it</source>
            <translation>Was daraus wurde</translation>
        </message>
        <message>
            <source>Keeper's initials</source>
            <translation>Kürzel des Pflegers</translation>
        </message>
        <message>
            <source>Remark</source>
            <translation>Bemerkung</translation>
        </message>
        <message>
            <source>What was given or done</source>
            <translation>Was gegeben oder getan wurde</translation>
        </message>
        <message>
            <source>Dose</source>
            <translation>Dosis</translation>
        </message>
        <message>
            <source>Who ordered it</source>
            <translation>Wer es angeordnet hat</translation>
        </message>
        <message>
            <source>Which measure</source>
            <translation>Welches Maß</translation>
        </message>
        <message>
            <source>Value, in the unit that the measure's name ends with</source>
            <translation>Wert, in der Einheit, mit der der Name des Maßes endet</translation>
        </message>
        <message>
            <source>Half-width of its 95 % interval, when it is known</source>
            <translation>Halbe Breite des 95-%-Intervalls, wenn bekannt</translation>
        </message>
        <message>
            <source>How it was taken</source>
            <translation>Wie es genommen wurde</translation>
        </message>
        <message>
            <source>Animal; or say the tank</source>
            <translation>Tier; oder das Becken angeben</translation>
        </message>
        <message>
            <source>Tank; or say the animal</source>
            <translation>Becken; oder das Tier angeben</translation>
        </message>
        <message>
            <source>Id of the finding, e.g. thin</source>
            <translation>Name des Befunds, z. B. thin</translation>
        </message>
        <message>
            <source>Day it was raised</source>
            <translation>Tag, an dem er gemeldet wurde</translation>
        </message>
        <message>
            <source>Decision</source>
            <translation>Entscheidung</translation>
        </message>
        <message>
            <source>Day to look again</source>
            <translation>Tag zum Wiederansehen</translation>
        </message>
        <message>
            <source>pipefish</source>
            <translation>Seenadel</translation>
        </message>
        <message>
            <source>seahorse</source>
            <translation>Seepferdchen</translation>
        </message>
        <message>
            <source>fish</source>
            <translation>anderer langer Fisch</translation>
        </message>
        <message>
            <source>unknown</source>
            <translation>nicht bekannt</translation>
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
            <source>died</source>
            <translation>gestorben</translation>
        </message>
        <message>
            <source>left</source>
            <translation>abgegeben</translation>
        </message>
        <message>
            <source>offered</source>
            <translation>angeboten</translation>
        </message>
        <message>
            <source>taken</source>
            <translation>gefressen</translation>
        </message>
        <message>
            <source>refused</source>
            <translation>verweigert</translation>
        </message>
        <message>
            <source>brooding</source>
            <translation>trägt</translation>
        </message>
        <message>
            <source>carrying-eggs</source>
            <translation>trägt Eier</translation>
        </message>
        <message>
            <source>just-spawned</source>
            <translation>hat eben abgelaicht</translation>
        </message>
        <message>
            <source>change-diet</source>
            <translation>Futter umstellen</translation>
        </message>
        <message>
            <source>measure-again</source>
            <translation>wieder messen</translation>
        </message>
        <message>
            <source>watch-feeding</source>
            <translation>Fressen beobachten</translation>
        </message>
        <message>
            <source>ask-veterinarian</source>
            <translation>Tierarzt fragen</translation>
        </message>
        <message>
            <source>acted</source>
            <translation>anders gehandelt</translation>
        </message>
        <message>
            <source>watch</source>
            <translation>beobachten</translation>
        </message>
        <message>
            <source>dismissed</source>
            <translation>abgetan</translation>
        </message>
        <message>
            <source>standard_length_mm</source>
            <translation>Standardlänge, mm</translation>
        </message>
        <message>
            <source>height_mm</source>
            <translation>Höhe, mm</translation>
        </message>
        <message>
            <source>trunk_width_mm</source>
            <translation>Rumpfbreite, mm</translation>
        </message>
        <message>
            <source>head_length_mm</source>
            <translation>Kopflänge, mm</translation>
        </message>
        <message>
            <source>trunk_length_mm</source>
            <translation>Rumpflänge, mm</translation>
        </message>
        <message>
            <source>tail_length_mm</source>
            <translation>Schwanzlänge, mm</translation>
        </message>
        <message>
            <source>trunk_depth_mm</source>
            <translation>Rumpftiefe, mm</translation>
        </message>
        <message>
            <source>girth_mm</source>
            <translation>Umfang, mm</translation>
        </message>
        <message>
            <source>girth_ratio</source>
            <translation>Umfangsverhältnis</translation>
        </message>
        <message>
            <source>depth_ratio</source>
            <translation>Tiefenverhältnis</translation>
        </message>
        <message>
            <source>behind-tankmates</source>
            <translation>bleibt zurück</translation>
        </message>
        <message>
            <source>getting-thinner</source>
            <translation>wird dünner</translation>
        </message>
        <message>
            <source>not-feeding</source>
            <translation>frisst nicht</translation>
        </message>
        <message>
            <source>tank-low</source>
            <translation>ganzes Becken zurück</translation>
        </message>
        <message>
            <source>measure-doubtful</source>
            <translation>Maß zweifelhaft</translation>
        </message>
        <message>
            <source>cannot-tell</source>
            <translation>nicht zu sagen</translation>
        </message>
    </context>
</TS>
